package org.cupbeam.fuzz;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.edge.trace.VcdReader;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.CommandJson;
import org.cupbeam.event.Samples;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.RigFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Each limit of what comes from outside: that much is taken, and one more is not. */
class LimitsTest {
    private static final int FILE_BYTES = 32 * 1024;
    private static final int MESSAGE_BYTES = 64 * 1024;
    private static final int WORD_BYTES = 64 * 1024;
    private static final int CODES = 65_536;
    private static final String COMMAND = "{\"id\":\"c-1\",\"by\":\"Jo\",\"command\":\"pass\"%s}";
    private static final String START = new String(CommandJson.encode(Samples.commands().get(0)), StandardCharsets.UTF_8);
    private static final String HEAD = "$timescale 1 ns $end $var wire 1 ! cup $end %s $enddefinitions $end\n";
    @TempDir
    Path folder;

    @Test
    void theBytesOfAFile() throws Exception {
        String drill = DrillFile.presetText("ladder");
        Path file = folder.resolve("file.toml");
        assertThat(DrillFile.read(Files.writeString(file, padded(drill, FILE_BYTES)))).isEqualTo(DrillFile.preset("ladder"));
        Files.writeString(file, padded(drill, FILE_BYTES + 1));
        assertThatThrownBy(() -> DrillFile.read(file)).hasMessage(file + ": is longer than 32 KiB; is it a drill file?");
        assertThat(RigFile.read(Files.writeString(file, padded(RigTarget.RIG, FILE_BYTES))).channels()).hasSize(5);
        Files.writeString(file, padded(RigTarget.RIG, FILE_BYTES + 1));
        assertThatThrownBy(() -> RigFile.read(file)).hasMessage(file + ": is longer than 32 KiB; is it a rig file?");
    }

    private static String padded(String text, int bytes) {
        return text + "#" + "x".repeat(bytes - text.getBytes(StandardCharsets.UTF_8).length - 1);
    }

    @Test
    void whatADrillMayHave() throws Exception {
        assertThat(drill("n".repeat(80), 100, 100).name()).hasSize(80);
        assertThatThrownBy(() -> drill("n".repeat(81), 1, 1)).hasMessageContaining("drill.toml:1: name: is 81 characters long");
        assertThatThrownBy(() -> drill("n", 101, 1)).hasMessageContaining("stations.count: 101 is out of range");
        assertThatThrownBy(() -> drill("n", 1, 101)).hasMessageContaining("balls.count: 101 is out of range");
    }

    private static Drill drill(String name, int stations, int balls) throws Exception {
        return DrillFile.parse("drill.toml", "name = \"" + name + "\"\n[stations]\nfirst_mm = 100\nstep_mm = 1\ncount = " + stations
                + "\n[balls]\ncount = " + balls + "\nsupply = \"whole-run\"\n[advance]\nholed = 1\n");
    }

    @Test
    void theBytesOfAMessageItsDepthAndItsDigits() throws Exception {
        String spaces = " ".repeat(MESSAGE_BYTES - command("").length);
        assertThat(CommandJson.decode(command(spaces)).id()).isEqualTo("c-1");
        assertThatThrownBy(() -> CommandJson.decode(command(spaces + " "))).hasMessage("payload: 65537 bytes; at most 65536 are read");
        assertThat(CommandJson.decode(command(",\"x\":" + "[".repeat(15) + "]".repeat(15))).id()).isEqualTo("c-1");
        assertThatThrownBy(() -> CommandJson.decode(command(",\"x\":" + "[".repeat(16) + "]".repeat(16))))
                .isInstanceOf(BadMessage.class).hasMessageContaining("nesting depth (17)");
        assertThat(CommandJson.decode(command(",\"x\":" + "1".repeat(64))).id()).isEqualTo("c-1");
        assertThatThrownBy(() -> CommandJson.decode(command(",\"x\":" + "1".repeat(65))))
                .isInstanceOf(BadMessage.class).hasMessageContaining("(65) exceeds the maximum allowed (64");
    }

    @Test
    void whatACommandMayHave() throws Exception {
        assertThat(CommandJson.decode(start(IntStream.range(0, 8).mapToObj(i -> i + "é".repeat(39)).toList())).id()).isEqualTo("c-1");
        assertThatThrownBy(() -> CommandJson.decode(start(IntStream.range(0, 9).mapToObj(i -> "n" + i).toList())))
                .hasMessage("players: has 9 entries; give at most 8");
        assertThatThrownBy(() -> CommandJson.decode(start(List.of("n".repeat(41)))))
                .hasMessage("players[0]: has 41 characters; give 1 to 40, not all blank");
        assertThat(CommandJson.decode(new String(command(""), StandardCharsets.UTF_8).replace("c-1", "i".repeat(64)).getBytes(
                StandardCharsets.UTF_8)).id()).hasSize(64);
        assertThatThrownBy(() -> CommandJson.decode(new String(command(""), StandardCharsets.UTF_8).replace("c-1", "i".repeat(65))
                .getBytes(StandardCharsets.UTF_8))).hasMessageStartingWith("id: has 65 characters; give 1 to 64");
    }

    private static byte[] command(String more) {
        return String.format(COMMAND, more).getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] start(List<String> players) {
        return START.replace("[\"Ana\",\"Bo\"]", players.stream().collect(Collectors.joining("\",\"", "[\"", "\"]")))
                .getBytes(StandardCharsets.UTF_8);
    }

    @Test
    void theWordsCodesAndTimesOfATrace() throws Exception {
        assertThat(endOf("", "$comment " + "x".repeat(WORD_BYTES) + " $end #7")).isEqualTo(7);
        assertThatThrownBy(() -> endOf("", "$comment " + "x".repeat(WORD_BYTES + 1) + " $end #7"))
                .hasMessage("t.vcd:2: a word of more than 65536 bytes; is it a Value Change Dump?");
        assertThat(endOf("$var wire 1 " + "c".repeat(64) + " n $end", "#7 1" + "c".repeat(64) + " ")).isEqualTo(7);
        assertThatThrownBy(() -> endOf("$var wire 1 " + "c".repeat(65) + " n $end", "#7"))
                .hasMessage("t.vcd:1: \"" + "c".repeat(40) + "…\" is one identifier code too many, or longer than 64; up to 65536"
                        + " signals would do");
        assertThat(endOf("", "#9223372036854775806")).isEqualTo(Long.MAX_VALUE - 1);
        assertThat(endOf("", "#9223372036854775807")).isEqualTo(Long.MAX_VALUE);
        assertThatThrownBy(() -> endOf("", "#9223372036854775808")).hasMessageContaining("is beyond 292 years");
    }

    @Test
    void theSignalsOfATrace() throws Exception {
        String most = IntStream.range(0, CODES).mapToObj(i -> "$var wire 1 c" + i + " n $end\n").collect(Collectors.joining());
        assertThat(endOf(most, "#7")).isEqualTo(7);
        assertThatThrownBy(() -> endOf(most + "$var wire 1 more n $end", "#7"))
                .hasMessageStartingWith("t.vcd:65537: \"more\" is one identifier code too many");
    }

    private static long endOf(String signals, String changes) throws Exception {
        Rig rig = RigFile.parse("rig.toml", "[green]\nstimp_ft = 10\nuphill_percent = 0\n[overshoot]\nlimit_mm = 900\n[cup]\ngpio = 4\n");
        byte[] trace = (String.format(HEAD, signals) + changes).getBytes(StandardCharsets.US_ASCII);
        try (VcdReader reader = new VcdReader(new ByteArrayInputStream(trace), "t.vcd", rig)) {
            reader.drainTo((channel, active, timeNs) -> { });
            return reader.timeNs();
        }
    }
}

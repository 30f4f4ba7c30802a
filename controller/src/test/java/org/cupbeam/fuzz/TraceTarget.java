package org.cupbeam.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.drill.Play;
import org.cupbeam.edge.trace.TraceException;
import org.cupbeam.edge.trace.VcdReader;
import org.cupbeam.lane.Replay;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.RigFile;
import org.cupbeam.rig.file.BadFileException;

/** A trace, read, tracked and scored as {@code replay} does it. */
public final class TraceTarget implements Target {
    private static final String HEAD = """
            $date today $end
            $timescale 1 us $end
            $scope module lane $end
            $var wire 1 ! cup $end
            $var wire 1 " strike $end
            $var wire 1 # pedal $end
            $var wire 1 p1 past-1 $end
            $var wire 1 p2 past-2 [0] $end
            $var wire 8 n count [7:0] $end
            $upscope $end
            $enddefinitions $end
            #0 $dumpvars 0! 0" 0# 0p1 0p2 b0 n $end
            """;
    private static final String PUTTS = """
            #1000000 1" #1003000 0"
            #3000000 1p1 #3040000 0p1 #3080000 1p2 #3120000 0p2
            #9000000 1" #9003000 0"
            #10000000 1! #10060000 0! $comment holed $end
            #20000000 1# #20100000 0# #20300000 1# #20400000 0#
            #30000000 1# #31000000 0# b0101 n x" 1" z" 0"
            #60000000
            """;

    private final Rig rig;

    public TraceTarget() {
        try {
            rig = RigFile.parse("rig.toml", RigTarget.RIG);
        } catch (BadFileException e) {
            throw new AssertionError(e);
        }
    }

    @Override
    public String name() {
        return "trace";
    }

    @Override
    public List<byte[]> seeds() {
        return List.of((HEAD + PUTTS).getBytes(StandardCharsets.US_ASCII),
                (HEAD.replace("1 us", "100 fs") + PUTTS).getBytes(StandardCharsets.US_ASCII));
    }

    @Override
    public List<String> words() {
        return List.of("$timescale", "$end", "1us", "10 s", "100 fs", "$scope", "$var", "wire", "real", "1", "!", "past-1",
                "cup", "$var wire 1 ! past-1 $end", "$enddefinitions $end", "#0", "#9223372036854775807", "#9223372036854",
                "#99999999999999999999", "\n#40000000 ", "1!", "0!", "x\"", "1\"", "0\"", "1#", "0#", "1p1", "0p1", "1p2",
                "0p2", "b1 !", "r1 !", "$dumpvars", "$comment", "$dumpoff", "META", "\\past-1", "$upscope $end");
    }

    @Override
    public String take(byte[] input) throws IOException {
        int[] lines = new int[1];
        Play play = Play.begin(DrillFile.preset("ladder"), List.of("Ana", "Bo"), rig.limitMm());
        Replay replay = new Replay(rig, play, line -> {
            lines[0]++;
            assertThat(line).startsWith("{").endsWith("}").hasSizeLessThan(1_000).doesNotContain("\n");
        });
        try (VcdReader reader = new VcdReader(new ByteArrayInputStream(input), "t.vcd", rig)) {
            assertThat(reader.drainTo(replay)).isEqualTo(VcdReader.Step.END);
            replay.advance(reader.timeNs());
            replay.end();
            return ACCEPTED;
        } catch (TraceException bad) {
            assertThat(bad).hasMessageMatching("(?s)t\\.vcd:[1-9]\\d*: .{8,}");
            return bad.getMessage();
        } finally {
            assertThat(lines[0]).as("no more putts than edges").isLessThanOrEqualTo(input.length);
        }
    }
}

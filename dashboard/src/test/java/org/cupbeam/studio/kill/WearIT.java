package org.cupbeam.studio.kill;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.cupbeam.studio.Tools;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * What an evening wears a card with: bytes that a lane's and a host's process have the kernel write, by its own count
 * ({@code write_bytes} of proc(5)), and lines that they log. A short evening in every build; in the nightly profile, or with
 * {@code -Dcupbeam.wear=true}, one of 250 putts, and a minute in which nobody plays. The figures go to {@code target/wear.md}.
 */
@Timeout(900)
class WearIT {
    private static final boolean LONG = Boolean.getBoolean("cupbeam.nightly") || Boolean.getBoolean("cupbeam.wear");
    private static final int LANE_KB_PER_PUTT = 40;
    private static final int HOST_KB_PER_PUTT = 150;
    private static final int LINES = 20;
    private static final int IDLE_KB = 64;

    private final Path target = Path.of("target").toAbsolutePath();
    /** On the disk: what lies in memory alone is written nowhere. */
    private Path folder;
    private String report = "";

    @BeforeEach
    void makeFolder() throws IOException {
        folder = Files.createTempDirectory(target, "wear");
    }

    @Test
    void anEveningWritesLittleAndSaysLittle() throws Exception {
        Path evening = Tools.reference("traces/" + (LONG ? "busy-standard" : "clean-standard")).toAbsolutePath().normalize();
        Path drill = Files.copy(Path.of("../controller/src/main/resources/org/cupbeam/drill/ladder.toml"), folder.resolve("drill.toml"));
        try (Fleet fleet = new Fleet(folder); Program lane = fleet.lane(() -> List.of("--rig", evening.resolve("rig.toml").toString(),
                "--trace", evening.resolve("trace.vcd").toString(), "--speed", LONG ? "20" : "40", "--drill", drill.toString(),
                "--players", "Ana,Bo"))) {
            for (Program each : List.of(fleet.broker, fleet.host)) {
                each.start();
            }
            Fleet.until(fleet.host::said, 60, () -> fleet.host.readyNs() != 0);
            long hostBefore = written(fleet.host);
            lane.start();
            Fleet.until(lane::said, 60, () -> lane.readyNs() != 0);
            long laneBefore = written(lane);
            Fleet.until(lane::said, 600, () -> lane.said().contains("is at its end"));
            Fleet.until(fleet.host::said, 60, () -> fleet.ask("SELECT count(*) FROM event").equals(events(fleet)));
            TimeUnit.SECONDS.sleep(1);
            int putts = Integer.parseInt(fleet.ask("SELECT count(*) FROM attempt"));
            assertThat(putts).isGreaterThan(LONG ? 200 : 30);
            check("lane", written(lane) - laneBefore, lane, putts, LANE_KB_PER_PUTT);
            check("host", written(fleet.host) - hostBefore, fleet.host, putts, HOST_KB_PER_PUTT);
            if (LONG) {
                nothingIsWrittenWhileNobodyPlays(lane, fleet.host);
            }
        }
    }

    private void nothingIsWrittenWhileNobodyPlays(Program... programs) throws Exception {
        for (Program each : programs) {
            long before = written(each);
            TimeUnit.SECONDS.sleep(60);
            report(String.format(Locale.ROOT, "| %s, idle for a minute | | %.1f KB | | |", each.name, (written(each) - before) / 1e3));
            assertThat(written(each) - before).as("bytes of %s while nobody plays", each.name).isLessThan(IDLE_KB * 1_000L);
        }
    }

    private void check(String name, long bytes, Program program, int putts, int mostKbPerPutt) throws IOException {
        long lines = program.said().lines().count();
        report(String.format(Locale.ROOT, "| %s | %d | %.2f MB | %.1f KB | %d |", name, putts, bytes / 1e6, bytes / 1e3 / putts, lines));
        assertThat(bytes).as("something is written; what lies in memory alone is not counted").isPositive();
        assertThat(bytes / 1e3 / putts).as("KB written by the %s for each putt", name).isLessThan(mostKbPerPutt);
        assertThat(lines).as("lines of the %s: %s", name, program.said()).isLessThanOrEqualTo(LINES);
    }

    private void report(String line) throws IOException {
        report += line + "\n";
        System.out.println(line);
        Files.writeString(target.resolve("wear.md"), "| | putts | written | a putt | lines |\n| --- | --- | --- | --- | --- |\n" + report);
    }

    private static String events(Fleet fleet) throws Exception {
        try (Kept journal = new Kept(fleet.journal())) {
            return journal.rows("SELECT max(sequence) FROM event").get(0);
        }
    }

    private static long written(Program program) throws IOException {
        Matcher line = Pattern.compile("(?m)^write_bytes: (\\d+)$").matcher(Files.readString(Path.of("/proc/" + program.pid() + "/io")));
        assertThat(line.find()).isTrue();
        return Long.parseLong(line.group(1));
    }
}

package org.cupbeam.studio.kill;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A day of play in twenty minutes: lane, broker and host run on, and hold no more at the end than after their first
 * quarter. In the nightly profile, or with {@code -Dcupbeam.soakMinutes=…}. The figures go to {@code target/soak.md}.
 */
@Timeout(value = 90, unit = TimeUnit.MINUTES)
class SoakIT {
    private static final int MINUTES = Integer.getInteger("cupbeam.soakMinutes",
            Boolean.getBoolean("cupbeam.nightly") ? 20 : 0);
    private static final int SPEED = 72;
    static final String RIG = """
            [green]
            stimp_ft = 10
            uphill_percent = 0
            [overshoot]
            limit_mm = 914.4
            [cup]
            gpio = 17
            [strike]
            gpio = 27
            [[beam]]
            name = "before-1"
            gpio = 22
            position_mm = -300
            height_mm = 21
            [[beam]]
            name = "before-2"
            gpio = 23
            position_mm = -240
            height_mm = 21
            [[beam]]
            name = "past-1"
            gpio = 5
            position_mm = 914.4
            height_mm = 21
            [[beam]]
            name = "past-2"
            gpio = 6
            position_mm = 974.4
            height_mm = 21
            """;

    private record Sample(int minute, Map<String, Gauge> held, String events) {
    }

    @TempDir
    private Path folder;

    @Test
    void nothingGrowsWhileADayIsPlayed() throws Exception {
        Assumptions.assumeTrue(MINUTES > 0, "takes twenty minutes: in the nightly profile, or with cupbeam.soakMinutes");
        Path rig = Files.writeString(folder.resolve("rig.toml"), RIG);
        Path drill = Files.writeString(folder.resolve("drill.toml"), """
                name = "putter lengths"
                [stations]
                first_mm = 914.4
                step_mm = 914.4
                count = 5
                [balls]
                count = 6
                supply = "every-station"
                [advance]
                holed = 1
                [overshoot]
                penalty = "none"
                """);
        List<Sample> samples = new ArrayList<>();
        try (Fleet fleet = new Fleet(folder); Program lane = fleet.lane(() -> List.of("--rig", rig.toString(), "--practice",
                "--speed", "" + SPEED, "--seed", "20", "--drill", drill.toString(), "--players", "Ana,Bo"))) {
            for (Program each : List.of(fleet.broker, fleet.host, lane)) {
                each.start();
            }
            Fleet.until(lane::said, 60, () -> lane.readyNs() != 0);
            long beganNs = System.nanoTime();
            for (int minute = 1; minute <= MINUTES; minute++) {
                TimeUnit.NANOSECONDS.sleep(beganNs + TimeUnit.MINUTES.toNanos(minute) - System.nanoTime());
                samples.add(sample(minute, fleet, lane));
                write(samples);
            }
            assertThat(lane.end()).isEqualTo(128 + 15);
            everythingIsStored(fleet);
        }
        hold(samples);
    }

    private static Sample sample(int minute, Fleet fleet, Program lane) throws Exception {
        Map<String, Gauge> held = new LinkedHashMap<>();
        held.put("lane", Gauge.of(lane.pid(), true));
        held.put("host", Gauge.of(fleet.host.pid(), true));
        held.put("mosquitto", Gauge.of(fleet.broker.pid(), false));
        return new Sample(minute, held, fleet.ask("SELECT (SELECT count(*) FROM attempt) || ' / ' || (SELECT stored FROM journal)"));
    }

    private static void everythingIsStored(Fleet fleet) throws Exception {
        String last;
        try (Kept journal = new Kept(fleet.journal())) {
            last = journal.rows("SELECT max(sequence) FROM event").get(0);
        }
        Fleet.until(() -> "all " + last + " events are stored, not " + fleet.ask("SELECT stored FROM journal"), 60,
                () -> last.equals(fleet.ask("SELECT stored FROM journal")));
        assertThat(fleet.ask("SELECT count(*) FROM event")).isEqualTo(last);
        assertThat(fleet.ask("SELECT count(*) FROM missing")).isEqualTo("0");
    }

    /** The last quarter against the second, so that what is loaded once at first is no growth. */
    private static void hold(List<Sample> samples) {
        int quarter = Math.max(1, samples.size() / 4);
        List<Sample> early = samples.subList(quarter, Math.min(samples.size(), 2 * quarter));
        List<Sample> late = samples.subList(samples.size() - quarter, samples.size());
        if (early.isEmpty()) {
            return;
        }
        for (String program : samples.get(0).held.keySet()) {
            flat(program + ", resident KiB", early, late, each -> each.held.get(program).residentKb(), 0.10, 6_000);
            flat(program + ", heap KiB", early, late, each -> each.held.get(program).heapKb(), 0.10, 1_500);
            flat(program + ", files", early, late, each -> each.held.get(program).files(), 0, 3);
            flat(program + ", threads", early, late, each -> each.held.get(program).threads(), 0, 2);
        }
    }

    private static void flat(String what, List<Sample> early, List<Sample> late, ToDoubleFunction<Sample> of, double share,
            double beside) {
        double before = early.stream().mapToDouble(of).average().orElseThrow();
        double after = late.stream().mapToDouble(of).average().orElseThrow();
        assertThat(after).as("%s at the end, %.0f in the second quarter", what, before)
                .isLessThanOrEqualTo(before * (1 + share) + beside);
    }

    private static void write(List<Sample> samples) throws Exception {
        StringBuilder table = new StringBuilder("| minute | played, h | putts / events stored |");
        samples.get(0).held.keySet().forEach(each -> table.append(' ').append(each).append(": MB, heap MB, files, threads |"));
        table.append("\n| --- | --- | --- | --- | --- | --- |\n");
        for (Sample each : samples) {
            table.append(String.format(Locale.ROOT, "| %d | %.1f | %s |", each.minute, each.minute * SPEED / 60.0, each.events));
            each.held.values().forEach(is -> table.append(String.format(Locale.ROOT, " %.1f, %s, %d, %d |",
                    is.residentKb() / 1024.0, is.heapKb() == 0 ? "–" : String.format(Locale.ROOT, "%.1f", is.heapKb() / 1024.0),
                    is.files(), is.threads())));
            table.append('\n');
        }
        Files.writeString(Path.of("target", "soak.md"), table);
    }
}

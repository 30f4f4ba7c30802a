package org.cupbeam.studio.bench;

import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Locale;

/**
 * Many lanes through a real Mosquitto into a real PostgreSQL, a board open for each, the packaged host in its own process.
 *
 * <p>Arguments: {@code curve} and the seconds of each step: lanes are doubled from 25 until the 99th percentile from putt to
 * board is above 250 ms, or events are not stored, or there are {@value #MOST_LANES}; a line of a table for each step. Or
 * {@code kills}, the seconds and the lanes: the host is killed (signal 9) twice meanwhile, and Mosquitto once.
 */
public final class FleetBench {
    private static final int FIRST_LANES = 25;
    /** The last doubling that a host shows all boards of. */
    private static final int MOST_LANES = 1_600;
    private static final double BAR_MS = 250;

    private FleetBench() {
    }

    public static void main(String[] args) throws Exception {
        say("load %.1f at the start, %d processors, Java %s", load(), Runtime.getRuntime().availableProcessors(),
                Runtime.version());
        int seconds = Integer.parseInt(args[1]);
        if (args[0].equals("kills")) {
            FleetRun.Result result = run(Integer.parseInt(args[2]), seconds, true);
            say("%s", result);
        } else {
            curve(seconds);
        }
        System.exit(0);
    }

    private static void curve(int seconds) throws Exception {
        say("| lanes | events/s | p50 ms | p99 ms | worst ms | host, %% of a core | PostgreSQL | Mosquitto | this program | host MB "
                + "| stored | load |");
        say("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        for (int lanes = FIRST_LANES; lanes <= MOST_LANES; lanes *= 2) {
            FleetRun.Result result = run(lanes, seconds, false);
            say("%s", result.row());
            if (result.p99Ms() > BAR_MS || result.stored() < result.sent()) {
                break;
            }
        }
    }

    private static FleetRun.Result run(int lanes, int seconds, boolean kills) throws Exception {
        Path folder = Files.createTempDirectory("fleet-bench");
        try (FleetRun run = new FleetRun(folder, lanes)) {
            return run.play(seconds, kills);
        } finally {
            try (var files = Files.walk(folder)) {
                for (Path each : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(each);
                }
            }
        }
    }

    static double load() {
        return ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage();
    }

    static void say(String format, Object... values) {
        System.out.printf(Locale.ROOT, format + "%n", values);
    }
}

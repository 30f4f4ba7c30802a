package org.cupbeam.studio.bench;

import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Locale;

/**
 * Many lanes through a real Mosquitto into a real PostgreSQL, a board open for each, the packaged host in its own process.
 *
 * <p>Arguments: {@code curve} and the seconds of each step: lanes are doubled from 25 to {@value #MOST_LANES}, and then their putts
 * a minute, until the 99th percentile from putt to board is above 250 ms or events are not stored; a line of a table for each
 * step. Or {@code kills}, the seconds and the lanes: the host is killed (signal 9) twice meanwhile, and Mosquitto once.
 * Or {@code step}, the seconds, the lanes and their putts a minute. Last, the host's heap in MB.
 */
public final class FleetBench {
    private static final int FIRST_LANES = 25;
    /** The last doubling that a host shows all boards of. */
    private static final int MOST_LANES = 1_600;
    private static final int PUTTS_PER_MINUTE = 30;
    private static final int MOST_PUTTS_PER_MINUTE = 480;
    private static final double BAR_MS = 250;

    private FleetBench() {
    }

    public static void main(String[] args) throws Exception {
        say("load %.1f at the start, %d processors, Java %s", load(), Runtime.getRuntime().availableProcessors(),
                Runtime.version());
        int seconds = Integer.parseInt(args[1]);
        int lanes = Integer.parseInt(args[2]);
        int heapMb = Integer.parseInt(args[4]);
        switch (args[0]) {
            case "kills" -> say("%s", run(lanes, PUTTS_PER_MINUTE, seconds, heapMb, true));
            case "step" -> say("%s", run(lanes, Integer.parseInt(args[3]), seconds, heapMb, false));
            case "curve" -> curve(seconds, heapMb);
            default -> throw new IllegalArgumentException("-Dfleet=" + args[0] + ": curve, kills or step");
        }
        System.exit(0);
    }

    private static void curve(int seconds, int heapMb) throws Exception {
        say("| lanes | putts a minute, each | events/s | p50 ms | p99 ms | worst ms | host, %% of a core | PostgreSQL | Mosquitto | this program | host MB "
                + "| stored | load |");
        say("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        int lanes = FIRST_LANES;
        int putts = PUTTS_PER_MINUTE;
        FleetRun.Result result;
        do {
            result = run(lanes, putts, seconds, heapMb, false);
            say("%s", result.row());
            if (lanes < MOST_LANES) {
                lanes *= 2;
            } else {
                putts *= 2;
            }
        } while (result.p99Ms() <= BAR_MS && result.stored() == result.sent() && putts <= MOST_PUTTS_PER_MINUTE);
    }

    private static FleetRun.Result run(int lanes, int putts, int seconds, int heapMb, boolean kills) throws Exception {
        Path folder = Files.createTempDirectory("fleet-bench");
        try (FleetRun run = new FleetRun(folder, lanes, putts, heapMb)) {
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

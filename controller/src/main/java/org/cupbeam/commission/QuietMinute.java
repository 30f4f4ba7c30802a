package org.cupbeam.commission;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;

/** A minute in which nobody touches anything: how often each sensor's line turns nevertheless. */
final class QuietMinute implements Watch {
    static final long LASTS_NS = 60_000_000_000L;
    /** Now and then a spike comes from outside, which play does not mind: three of them. */
    static final int EDGES_MAX = 6;
    private static final int KEPT = 4096;
    /** How often lamps on the mains flicker, and the mains itself swings, ms: 60 and 50 Hz. */
    private static final double[] MAINS_MS = {1000 / 120.0, 1000 / 100.0, 1000 / 60.0, 1000 / 50.0};
    private static final double NEAR = 0.04;

    private final Lines lines;
    private final Collection<Found> known;
    private final Consumer<List<String>> over;
    private final int[] edges;
    private final long[][] rises;
    private final int[] rose;
    private long beganNs = -1;
    private boolean ended;

    /** @param over is told once what is wrong, if anything is */
    QuietMinute(Lines lines, Collection<Found> known, Consumer<List<String>> over) {
        this.lines = lines;
        this.known = List.copyOf(known);
        this.over = over;
        edges = new int[lines.count()];
        rises = new long[lines.count()][];
        rose = new int[lines.count()];
    }

    @Override
    public void edge(int line, boolean high, long timeNs) {
        begin(timeNs);
        edges[line]++;
        if (high && rose[line] < KEPT) {
            rises[line] = rises[line] == null ? new long[KEPT] : rises[line];
            rises[line][rose[line]++] = timeNs;
        }
    }

    @Override
    public void settled(long timeNs) {
        begin(timeNs);
        if (timeNs - beganNs >= LASTS_NS && !ended) {
            ended = true;
            over.accept(known.stream().flatMap(each -> troubles(each).stream()).toList());
        }
    }

    private void begin(long timeNs) {
        beganNs = beganNs < 0 ? timeNs : beganNs;
    }

    private List<String> troubles(Found each) {
        List<String> troubles = new ArrayList<>();
        if (edges[each.line()] > EDGES_MAX) {
            troubles.add(lines.called(each.line()) + " turned " + edges[each.line()] + " times in a minute in which nobody touched it"
                    + " (up to " + EDGES_MAX + " would do): " + cause(each.line()));
        }
        if (each.isActive(lines.isHigh(each.line()))) {
            troubles.add(each.sensor().name() + " is blocked at the end of the quiet minute, and never cleared: misaligned or unplugged");
        }
        return troubles;
    }

    private String cause(int line) {
        double everyMs = everyMs(line);
        for (double mains : MAINS_MS) {
            if (Math.abs(everyMs / mains - 1) < NEAR) {
                return String.format(Locale.ROOT, "every %.1f ms, as a lamp on the mains flickers: shade the receiver, or turn it"
                        + " away from that lamp", everyMs);
            }
        }
        return "keep sun and lamps off the receiver, turn its lamp square to it, see to its plug, and keep its cable off"
                + " mains cables";
    }

    /** The median time from one rise to the next, ms; NaN where there are too few. */
    private double everyMs(int line) {
        if (rose[line] < 5) {
            return Double.NaN;
        }
        long[] gaps = new long[rose[line] - 1];
        for (int i = 0; i < gaps.length; i++) {
            gaps[i] = rises[line][i + 1] - rises[line][i];
        }
        Arrays.sort(gaps);
        return gaps[gaps.length / 2] / 1e6;
    }
}

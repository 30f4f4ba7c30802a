package org.cupbeam.lane;

import java.util.Arrays;

/** What one sensor does, for people to look at: whether it is on, when it last turned and how often. No allocation. */
final class SensorWatch {
    private static final long SECOND_NS = 1_000_000_000L;
    private static final int SECONDS = 60;

    private final int[] edges = new int[SECONDS];
    private long second;
    private boolean active;
    private long sinceNs;
    private boolean seen;

    SensorWatch(long nowNs) {
        second = Math.floorDiv(nowNs, SECOND_NS);
        sinceNs = nowNs;
    }

    void edge(boolean nowActive, long timeNs) {
        turnTo(timeNs);
        edges[(int) Math.floorMod(second, (long) SECONDS)]++;
        seen = true;
        active = nowActive;
        sinceNs = timeNs;
    }

    /** Takes note of time. */
    void tick(long nowNs) {
        turnTo(nowNs);
    }

    /** Whether it has turned at all. */
    boolean seen() {
        return seen;
    }

    boolean active() {
        return active;
    }

    /** s since its last edge; NaN where it never had one. */
    double lastEdgeAgoS(long nowNs) {
        return seen ? Math.max(0, nowNs - sinceNs) * 1e-9 : Double.NaN;
    }

    /** In the last minute. */
    int edgesPerMinute() {
        return Arrays.stream(edges).sum();
    }

    private void turnTo(long timeNs) {
        long now = Math.floorDiv(timeNs, SECOND_NS);
        if (now - second > SECONDS) {
            Arrays.fill(edges, 0);
            second = now;
        }
        while (second < now) {
            second++;
            edges[(int) Math.floorMod(second, (long) SECONDS)] = 0;
        }
    }
}

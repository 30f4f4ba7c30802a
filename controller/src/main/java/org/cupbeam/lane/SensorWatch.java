package org.cupbeam.lane;

import java.util.Arrays;
import org.cupbeam.event.Health.Sensor.Condition;
import org.cupbeam.rig.Channel;

/**
 * One sensor's condition, from its edges and their absence. No allocation.
 *
 * <pre>
 *   UNSEEN --edge--> CLEAR &lt;--edges--> BLOCKED --8 s--> STUCK
 *                      any --too many edges in 10 s--> CHATTERING
 *   back from STUCK after a second of not being blocked, from CHATTERING once edges are half as many
 * </pre>
 */
final class SensorWatch {
    /** Nobody stands in a beam, or has a hand in the cup, for so long; a ball at rest may, and is told of like a bag. */
    static final long STUCK_NS = 8_000_000_000L;
    private static final long WELL_NS = 1_000_000_000L;
    private static final long SECOND_NS = 1_000_000_000L;
    private static final int SECONDS = 60;
    private static final int CHATTER_SECONDS = 10;

    private final int tooMany;
    private final int[] edges = new int[SECONDS];
    private long second;
    private int lately;
    private boolean active;
    private long sinceNs;
    private boolean seen;
    private boolean stuck;
    private boolean chattering;

    SensorWatch(Channel.Kind kind, long nowNs) {
        tooMany = tooMany(kind);
        second = Math.floorDiv(nowNs, SECOND_NS);
        sinceNs = nowNs;
    }

    /**
     * As many edges in 10 s as no game makes. Hands and rattling balls give a cup 38, feet and balls give a beam 12
     * (recorded evenings in a busy room); a switch bounces.
     */
    private static int tooMany(Channel.Kind kind) {
        return switch (kind) {
            case BEAM -> 40;
            case CUP -> 100;
            case STRIKE -> 60;
            case PEDAL -> 100;
        };
    }

    void edge(boolean nowActive, long timeNs) {
        turnTo(timeNs);
        edges[(int) Math.floorMod(second, (long) SECONDS)]++;
        lately++;
        chattering |= lately >= tooMany;
        seen = true;
        active = nowActive;
        sinceNs = timeNs;
    }

    /** Takes note of time. */
    void tick(long nowNs) {
        turnTo(nowNs);
        if (active && nowNs - sinceNs >= STUCK_NS) {
            stuck = true;
        } else if (!active && nowNs - sinceNs >= WELL_NS) {
            stuck = false;
        }
        if (chattering && lately < tooMany / 2) {
            chattering = false;
        }
    }

    Condition condition() {
        if (chattering) {
            return Condition.CHATTERING;
        }
        if (stuck) {
            return Condition.STUCK;
        }
        if (!seen) {
            return Condition.UNSEEN;
        }
        return active ? Condition.BLOCKED : Condition.CLEAR;
    }

    /** Whether its edges can be believed. */
    boolean usable() {
        return !stuck && !chattering;
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
            lately = 0;
            second = now;
        }
        while (second < now) {
            second++;
            edges[(int) Math.floorMod(second, (long) SECONDS)] = 0;
            lately -= edges[(int) Math.floorMod(second - CHATTER_SECONDS, (long) SECONDS)];
        }
    }
}

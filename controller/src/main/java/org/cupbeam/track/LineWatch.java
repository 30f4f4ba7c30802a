package org.cupbeam.track;

import org.cupbeam.rig.Channel;

/**
 * Whether one sensor's edges, and their absence, are such as a sound sensor can give. It knows no clock: what time alone
 * changes is due at a time ({@link #dueNs}). No allocation.
 *
 * <pre>
 *   sound --on for 8 s--> STUCK --off for 1 s--> sound
 *   sound --too many edges in 10 s--> CHATTERING --half as many--> sound
 *   sound --on from the start, and still after 2 s--> STUCK --off for 10 s--> sound
 *   STUCK --off for moments only, twice--> REVERSED --off for as long as STUCK--> sound
 * </pre>
 */
final class LineWatch {
    /** Nobody stands in a beam, or has a hand in the cup, for so long; a ball at rest may, and is told of like a bag. */
    static final long STUCK_NS = 8_000_000_000L;
    private static final long STILL_NS = 2_000_000_000L;
    private static final long WELL_NS = 1_000_000_000L;
    private static final long HANDS_NS = 10_000_000_000L;
    private static final long WINDOW_NS = 10_000_000_000L;
    /** A line that is on from the start says so within this of the lane's begin. */
    private static final long START_NS = 250_000_000;
    /** So many balls through a sensor that is wired the wrong way round. */
    private static final int MOMENTS = 2;

    private final long[] edgeNs;
    /** How many of the last are kept, and where the next goes. */
    private int edges;
    private int next;
    private boolean active;
    private long sinceNs;
    private boolean stuck;
    private boolean chattering;
    private boolean fromStart;
    /** Its last stretch on was longer than a moment. */
    private boolean wasStill;
    private int moments;

    LineWatch(Channel.Kind kind) {
        edgeNs = new long[tooMany(kind)];
    }

    /**
     * As many edges in 10 s as no game makes. Hands and rattling balls give a cup 38, feet and balls give a beam 12
     * (recorded evenings in a busy room); a switch bounces.
     */
    private static int tooMany(Channel.Kind kind) {
        return switch (kind) {
            case BEAM -> 40;
            case CUP, PEDAL -> 100;
            case STRIKE -> 60;
        };
    }

    /** Takes an edge; {@code startNs} is when the lane began. */
    void edge(boolean nowActive, long timeNs, long startNs) {
        if (nowActive == active) {
            return;
        }
        long lastedNs = timeNs - sinceNs;
        if (nowActive && edges == 0) {
            fromStart = timeNs - startNs < START_NS;
        } else if (nowActive) {
            moments += wasStill && stuck && lastedNs < wellNs() ? 1 : 0;
        } else {
            wasStill = lastedNs >= STILL_NS;
            fromStart &= wasStill || stuck;
        }
        edgeNs[next] = timeNs;
        next = next + 1 == edgeNs.length ? 0 : next + 1;
        edges = Math.min(edges + 1, edgeNs.length);
        chattering |= edges == edgeNs.length && timeNs - edgeNs[next] < WINDOW_NS;
        active = nowActive;
        sinceNs = timeNs;
    }

    /** When time alone changes something if no edge comes before; {@link Sensor#NEVER} if nothing waits. */
    long dueNs() {
        long due = chattering ? quietNs() : Sensor.NEVER;
        if (active) {
            return stuck ? due : Math.min(due, sinceNs + (fromStart ? STILL_NS : STUCK_NS));
        }
        return stuck || fromStart ? Math.min(due, sinceNs + wellNs()) : due;
    }

    /** Settles what is due by this time. */
    void settle(long nowNs) {
        chattering &= nowNs < quietNs();
        if (active) {
            stuck |= nowNs >= sinceNs + (fromStart ? STILL_NS : STUCK_NS);
            return;
        }
        if (nowNs >= sinceNs + wellNs()) {
            stuck = false;
            fromStart = false;
            moments = 0;
        }
    }

    /** For how long it must be off to be believed again: a hand in the cup turns one that is the wrong way round off for some. */
    private long wellNs() {
        return fromStart ? HANDS_NS : WELL_NS;
    }

    /** When there are fewer than half as many edges in the window. */
    private long quietNs() {
        int half = edgeNs.length / 2;
        return edges < half ? Long.MIN_VALUE : edgeNs[next < half ? next + edgeNs.length - half : next - half] + WINDOW_NS;
    }

    Doubt doubt() {
        if (chattering) {
            return Doubt.CHATTERING;
        }
        if (stuck && moments >= MOMENTS) {
            return Doubt.REVERSED;
        }
        return stuck ? Doubt.STUCK : Doubt.NONE;
    }

    /** Whether it has been on since the start, but for moments. */
    boolean isOnFromStart() {
        return fromStart;
    }
}

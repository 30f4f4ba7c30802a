package org.cupbeam.edge.practice;

import java.util.Arrays;
import java.util.PriorityQueue;
import java.util.SplittableRandom;

/**
 * One channel's way from what blocks the sensor to the edges that a board would see.
 *
 * <p>Whatever blocks it is counted, so that a ball behind a foot changes nothing; the receiver follows late, and may
 * chatter; spikes turn the line over for a moment. Edges come out once nothing that is still to be told can come
 * before them, and the same whatever the portions in which they are asked for.
 */
final class Wire {
    /** No delay or chatter moves an edge by more than this, ns. */
    static final long SLACK_NS = 5_000_000;
    private static final double NS_PER_US = 1_000;
    private static final int MOST_CHATTER = 3;
    private static final long APART_NS = 1_000;

    private final Sensing sensing;
    private final SplittableRandom random;
    private final double lateOnNs;
    private final double lateOffNs;
    /** What blocks and frees the sensor: time, doubled, the lowest bit set when it frees. */
    private final PriorityQueue<Long> happenings = new PriorityQueue<>();
    /** When the line turns over. */
    private final PriorityQueue<Long> turns = new PriorityQueue<>();
    private int blockers;
    private long lastTurnNs = Long.MIN_VALUE;
    private boolean active;

    Wire(Sensing sensing, SplittableRandom random) {
        this.sensing = sensing;
        this.random = random;
        lateOnNs = lateness();
        lateOffNs = lateness();
    }

    private double lateness() {
        return Math.max(0, sensing.delayUs() + sensing.delaySdUs() * random.nextGaussian()) * NS_PER_US;
    }

    void change(boolean blocked, long timeNs) {
        happenings.add(timeNs << 1 | (blocked ? 0 : 1));
    }

    void block(long fromNs, long toNs) {
        change(true, fromNs);
        change(false, Math.max(toNs, fromNs + APART_NS));
    }

    /** A spike from outside, which the receiver has no part in. */
    void spike(long timeNs, long lengthNs) {
        turns.add(timeNs);
        turns.add(timeNs + lengthNs);
    }

    /** Works out everything that happens before this time. */
    void advance(long untilNs) {
        while (!happenings.isEmpty() && happenings.peek() >> 1 < untilNs) {
            long next = happenings.poll();
            boolean frees = (next & 1) == 1;
            blockers += frees ? -1 : 1;
            if (blockers == (frees ? 0 : 1)) {
                follow(next >> 1, frees ? lateOffNs : lateOnNs);
            }
        }
    }

    private void follow(long timeNs, double lateNs) {
        long at = timeNs + Math.round(lateNs + sensing.jitterUs() * NS_PER_US * random.nextGaussian());
        if (random.nextDouble() >= sensing.chatterShare()) {
            turn(at);
            return;
        }
        long[] bursts = new long[2 * random.nextInt(1, MOST_CHATTER + 1) + 1];
        double spanNs = sensing.chatterUs() * NS_PER_US * random.nextDouble();
        for (int i = 0; i < bursts.length; i++) {
            bursts[i] = at + Math.round(spanNs * (random.nextDouble() - 0.5));
        }
        Arrays.sort(bursts);
        for (long burst : bursts) {
            turn(burst);
        }
    }

    private void turn(long timeNs) {
        lastTurnNs = Math.max(timeNs, lastTurnNs + APART_NS);
        turns.add(lastTurnNs);
    }

    /** When the line next turns over; the end of time when it does not, as far as is known. */
    long nextTurnNs() {
        return turns.isEmpty() ? Long.MAX_VALUE : turns.peek();
    }

    /** Turns the line over, and says whether it is active then. */
    boolean takeTurn() {
        turns.poll();
        active = !active;
        return active;
    }
}

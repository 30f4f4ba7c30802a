package org.cupbeam.edge.practice;

import java.util.Arrays;
import java.util.PriorityQueue;

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

    /** Kinds of happenings, in the lowest bits of their times. */
    private static final int BLOCK = 0;
    private static final int FREE = 1;
    private static final int MUTE = 2;
    private static final int SPEAK = 3;
    private static final int KIND_BITS = 2;

    private final Sensing sensing;
    private final Dice dice;
    private final double lateOnNs;
    private final double lateOffNs;
    private final PriorityQueue<Long> happenings = new PriorityQueue<>();
    /** When the line turns over. */
    private final PriorityQueue<Long> turns = new PriorityQueue<>();
    private int blockers;
    private int mutes;
    private boolean reported;
    private long lastTurnNs = Long.MIN_VALUE;
    private boolean active;

    Wire(Sensing sensing, Dice dice) {
        this.sensing = sensing;
        this.dice = dice;
        lateOnNs = lateness();
        lateOffNs = lateness();
    }

    private double lateness() {
        return Math.max(0, sensing.delayUs() + sensing.delaySdUs() * dice.normal()) * NS_PER_US;
    }

    void change(boolean blocked, long timeNs) {
        happenings.add(timeNs << KIND_BITS | (blocked ? BLOCK : FREE));
    }

    void block(long fromNs, long toNs) {
        change(true, fromNs);
        change(false, Math.max(toNs, fromNs + APART_NS));
    }

    /** The receiver says nothing for this time. */
    void mute(long fromNs, long toNs) {
        happenings.add(fromNs << KIND_BITS | MUTE);
        happenings.add(toNs << KIND_BITS | SPEAK);
    }

    /** A spike from outside, which the receiver has no part in. */
    void spike(long timeNs, long lengthNs) {
        turns.add(timeNs);
        turns.add(timeNs + lengthNs);
    }

    /** Works out everything that happens before this time. */
    void advance(long untilNs) {
        while (!happenings.isEmpty() && happenings.peek() >> KIND_BITS < untilNs) {
            long next = happenings.poll();
            switch ((int) next & (1 << KIND_BITS) - 1) {
                case BLOCK -> blockers++;
                case FREE -> blockers--;
                case MUTE -> mutes++;
                default -> mutes--;
            }
            boolean shows = blockers > 0 && mutes == 0;
            if (shows != reported) {
                reported = shows;
                follow(next >> KIND_BITS, shows ? lateOnNs : lateOffNs);
            }
        }
    }

    private void follow(long timeNs, double lateNs) {
        long at = timeNs + Math.round(lateNs + sensing.jitterUs() * NS_PER_US * dice.normal());
        if (!dice.chance(sensing.chatterShare())) {
            turn(at);
            return;
        }
        long[] bursts = new long[2 * dice.number(1, MOST_CHATTER) + 1];
        double spanNs = dice.between(0, sensing.chatterUs() * NS_PER_US);
        for (int i = 0; i < bursts.length; i++) {
            bursts[i] = at + Math.round(spanNs * dice.between(-0.5, 0.5));
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

package org.cupbeam.track;

import org.cupbeam.rig.Rig;

/**
 * Which of a lane's sensors can be believed, by edges alone: so a replay believes the same as the lane did. What is not
 * believed makes no attempts, and its silence says nothing.
 */
final class Doubts {
    private final LineWatch[] lines;
    private final boolean[] ruledOut;
    private long startNs = Long.MIN_VALUE / 2;

    Doubts(Rig rig) {
        lines = rig.channels().stream().map(channel -> new LineWatch(channel.kind())).toArray(LineWatch[]::new);
        ruledOut = new boolean[lines.length];
    }

    /** Sources say at once which lines are on at this time. */
    void begin(long timeNs) {
        startNs = timeNs;
    }

    /** Takes an edge; true if the line is thought of otherwise from now on. */
    boolean edge(int channel, boolean active, long timeNs) {
        Doubt before = lines[channel].doubt();
        lines[channel].edge(active, timeNs, startNs);
        return lines[channel].doubt() != before;
    }

    /** When time alone changes what is thought of a line. */
    long dueNs(int channel) {
        return lines[channel].dueNs();
    }

    /** Likewise, of the first of them all. */
    long dueNs() {
        long first = Sensor.NEVER;
        for (LineWatch line : lines) {
            first = Math.min(first, line.dueNs());
        }
        return first;
    }

    void settle(long nowNs) {
        for (LineWatch line : lines) {
            line.settle(nowNs);
        }
    }

    /** Whether a channel's word counts. */
    boolean believes(int channel) {
        return !ruledOut[channel] && of(channel).isBelieved();
    }

    void ruleOut(int channel, boolean whether) {
        ruledOut[channel] = whether;
    }

    /** Whether it has been on since the start, but for moments. */
    boolean isOnFromStart(int channel) {
        return lines[channel].isOnFromStart();
    }

    Doubt of(int channel) {
        return lines[channel].doubt();
    }
}

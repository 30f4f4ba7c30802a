package org.cupbeam.track;

import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;

/**
 * Which of a lane's sensors can be believed, by edges alone: so a replay believes the same as the lane did. What is not
 * believed makes no attempts, and its silence says nothing.
 */
final class Doubts {
    private final LineWatch[] lines;
    private final boolean[] ruledOut;
    private final Channel.Kind[] kinds;
    private final Lay lay;
    private final Room room;
    private final Pairs pairs;
    private final Silence silence;
    private long dueNs = Sensor.NEVER;
    private long startNs = Long.MIN_VALUE / 2;

    Doubts(Rig rig, Lay lay, Room room, Pairs pairs, Silence silence) {
        this.lay = lay;
        this.room = room;
        this.pairs = pairs;
        this.silence = silence;
        kinds = rig.channels().stream().map(Channel::kind).toArray(Channel.Kind[]::new);
        lines = rig.channels().stream().map(channel -> new LineWatch(channel.kind())).toArray(LineWatch[]::new);
        ruledOut = new boolean[lines.length];
    }

    /** Sources say at once which lines are on at this time. */
    void begin(long timeNs) {
        startNs = timeNs;
    }

    /** Takes an edge; true if the line is thought of otherwise from now on. */
    boolean edge(int channel, boolean active, long timeNs) {
        LineWatch line = lines[channel];
        Doubt before = line.doubt();
        line.edge(active, timeNs, startNs);
        dueNs = Math.min(dueNs, line.dueNs());
        return line.doubt() != before;
    }

    /** When time alone may change what is thought of a line: never late, though perhaps for nothing. */
    long dueNs() {
        return dueNs;
    }

    /** Settles what is due by this time; true if it was looked into. */
    boolean settle(long nowNs) {
        if (nowNs < dueNs) {
            return false;
        }
        dueNs = Sensor.NEVER;
        for (LineWatch line : lines) {
            line.settle(nowNs);
            dueNs = Math.min(dueNs, line.dueNs());
        }
        return true;
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

    /** Whether its own edges say nothing against it. */
    boolean isLineSound(int channel) {
        return lines[channel].doubt() == Doubt.NONE;
    }

    Doubt of(int channel) {
        if (!isLineSound(channel)) {
            return lines[channel].doubt();
        }
        return switch (kinds[channel]) {
            case CUP -> silence.ofCup();
            case STRIKE -> silence.ofStrikes();
            case PEDAL -> Doubt.NONE;
            case BEAM -> ofBeam(room.beamOf(channel));
        };
    }

    /** A pair of which one's line is out of order can say nothing of the other. */
    private Doubt ofBeam(int beam) {
        int fellow = lay.fellow(beam);
        return fellow < 0 || !isLineSound(lay.channel[fellow]) ? Doubt.NONE : pairs.doubt(beam);
    }

    Reason reason(int channel) {
        Doubt doubt = of(channel);
        int beam = room.beamOf(channel);
        if (beam < 0 || lay.fellow(beam) < 0 || doubt == Doubt.NONE) {
            return Reason.of(doubt);
        }
        boolean misplaced = doubt == Doubt.MISPLACED;
        return new Reason(doubt, lay.channel[lay.fellow(beam)], misplaced ? pairs.insteadMm(beam) : Double.NaN,
                misplaced ? pairs.apartMm(beam) : Double.NaN);
    }
}

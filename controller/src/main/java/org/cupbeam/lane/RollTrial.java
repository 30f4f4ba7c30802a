package org.cupbeam.lane;

import java.util.ArrayList;
import java.util.List;
import java.util.function.LongSupplier;
import org.cupbeam.event.Rolls;
import org.cupbeam.rig.Rig;
import org.cupbeam.track.RollWatch;
import org.cupbeam.track.RolledBall;

/**
 * A test of the green by balls rolled by hand. While it goes on, putts are not counted; it ends by itself, so that no lane
 * stays deaf because somebody went away. Nothing of it is written down: a lane that lost its power counts putts again. The
 * lane's thread alone.
 */
final class RollTrial {
    /** After so long without a roll it ends. */
    static final long LONGEST_NS = 600_000_000_000L;
    /** So many crossings are told of at most, so that health stays small. */
    private static final int CROSSINGS_MAX = 480;

    private final List<Rolls.Beam> beams = new ArrayList<>();
    private final List<Rolls.Roll> rolls = new ArrayList<>();
    private final LongSupplier nowNs;
    private final Rig rig;
    private final int kept;
    private RollWatch watch;
    private boolean on;
    private int number;
    private int changes;
    private long endsNs;
    /** Of the test that goes on, or of the last; and of the one before that. */
    private long beganNs = Long.MAX_VALUE;
    private long endedNs = Long.MAX_VALUE;
    private long earlierBeganNs = Long.MAX_VALUE;
    private long earlierEndedNs = Long.MAX_VALUE;

    RollTrial(Rig rig, LongSupplier nowNs) {
        this.nowNs = nowNs;
        this.rig = rig;
        watch = new RollWatch(rig, this::rolled);
        List<Double> chords = watch.chordsMm();
        for (int i = 0; i < rig.beams().size(); i++) {
            beams.add(new Rolls.Beam(rig.channels().get(rig.beams().get(i).channel()).name(),
                    rig.beams().get(i).positionMm(), chords.get(i)));
        }
        kept = Math.min(Rolls.MAX_ROLLS, CROSSINGS_MAX / Math.max(1, beams.size()));
    }

    /** Why none can begin; null where one can. */
    String objection() {
        return beams.size() >= RollWatch.BEAMS_MIN ? null
                : "a roll is measured between two beams, and this rig has fewer: fit another";
    }

    boolean on() {
        return on;
    }

    /** Begins one, or goes on afresh. */
    void begin() {
        if (!on) {
            earlierBeganNs = beganNs;
            earlierEndedNs = endedNs;
            beganNs = nowNs.getAsLong();
        }
        watch = new RollWatch(rig, this::rolled);
        on = true;
        number = 0;
        rolls.clear();
        endsNs = nowNs.getAsLong() + LONGEST_NS;
        changes++;
    }

    /** Ends it, if one goes on. */
    void end() {
        if (on) {
            on = false;
            endedNs = nowNs.getAsLong();
            rolls.clear();
            changes++;
        }
    }

    void edge(int channel, boolean active, long timeNs) {
        if (on) {
            watch.edge(channel, active, timeNs);
        }
    }

    /** Takes note of time, up to which edges are settled. */
    void advance(long settledNs) {
        if (on) {
            watch.advance(settledNs);
            if (settledNs >= endsNs) {
                end();
            }
        }
    }

    /** Whether what was first seen then is a ball of a test, and no putt. */
    boolean has(long timeNs) {
        return timeNs >= beganNs && (on || timeNs < endedNs) || timeNs >= earlierBeganNs && timeNs < earlierEndedNs;
    }

    /** Grows with whatever there is to tell. */
    int changes() {
        return changes;
    }

    /** What there is to tell; null where no test goes on. */
    Rolls report() {
        return on ? new Rolls((endsNs - nowNs.getAsLong()) * 1e-9, beams, rolls) : null;
    }

    private void rolled(RolledBall ball) {
        long firstNs = ball.timeNs();
        rolls.add(new Rolls.Roll(++number, ball.toward() ? Rolls.Way.TOWARD : Rolls.Way.BACK, ball.crossings().stream()
                .map(each -> new Rolls.Crossing(each.beam(), each.onNs() - firstNs, each.offNs() - firstNs)).toList()));
        if (rolls.size() > kept) {
            rolls.remove(0);
        }
        endsNs = nowNs.getAsLong() + LONGEST_NS;
        changes++;
    }
}

package org.cupbeam.edge.practice;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.cupbeam.edge.practice.Truth.Trait;
import org.cupbeam.green.Ball;
import org.cupbeam.green.Hole;

/** One ball struck at the hole: what became of it, and what would have without a hole. */
final class Putt {
    private static final double FAST_MM_PER_S = 1400;
    private static final double NS_PER_S = 1e9;

    private final Turf turf;
    private final double fromMm;
    private final Roll roll;
    private final Shadow shadow;
    private final Passage free;
    private final Set<Trait> traits = EnumSet.noneOf(Trait.class);
    private long struckNs;

    /**
     * Rolls it out.
     *
     * @param cup    the hole
     * @param fromMm where it is putted from
     * @param aim    how it is set off
     * @param lights what it may block
     */
    Putt(Cup cup, double fromMm, Aim aim, List<Light> lights) {
        this.turf = cup.turf();
        this.fromMm = fromMm;
        Body start = aim.start(fromMm);
        shadow = new Shadow(lights, start);
        roll = new Roll(turf, cup, start).run(shadow);
        free = Passage.of(turf, start);
    }

    /** Sets when it is struck; it rolls the same whenever that is. */
    void strikeAt(long timeNs) {
        struckNs = timeNs;
    }

    void mark(Trait trait) {
        traits.add(trait);
    }

    Turf turf() {
        return turf;
    }

    Shadow shadow() {
        return shadow;
    }

    long struckNs() {
        return struckNs;
    }

    double durationS() {
        return roll.timeS();
    }

    long endedNs() {
        return struckNs + Math.round(roll.timeS() * NS_PER_S);
    }

    boolean holed() {
        return roll.dropped();
    }

    /** Whether it would reach some light before, or as, a ball struck before it leaves that light: would run into it. */
    boolean overtakes(Putt before, long apartNs) {
        for (Shadow.Change mine : shadow.changes()) {
            for (Shadow.Change other : before.shadow.changes()) {
                if (mine.light() == other.light()
                        && struckNs + mine.timeNs() < before.struckNs + other.timeNs() + apartNs) {
                    return true;
                }
            }
        }
        return false;
    }

    /** What happened, once it is known whether a sensor saw it. */
    Truth truth(double limitMm, boolean visible) {
        double finishMm = holed() ? Double.NaN : roll.at().x;
        double sideMm = holed() ? Double.NaN : roll.at().y;
        findTraits();
        return new Truth(struckNs, endedNs(), fromMm, holed(), finishMm, sideMm, finishMm > limitMm, visible,
                free.speedMmPerS(), free.restMm(), roll.rimmedOut(), turf.alongLine(), traits);
    }

    private void findTraits() {
        if (free.speedMmPerS() > FAST_MM_PER_S) {
            mark(Trait.FAST);
        }
        if (free.reached() && free.restMm() < Ball.DIAMETER_MM) {
            mark(Trait.DYING);
        }
        if (shadow.blocksAny()) {
            mark(Trait.IN_BEAM);
        }
        if (!holed() && roll.at().fromHole() < Hole.RADIUS_MM + Ball.RADIUS_MM) {
            mark(Trait.ON_LIP);
        }
        if (roll.rimmedOut() && roll.lowestMm() < 0) {
            mark(Trait.POPPED_OUT);
        }
        if (roll.rimmedOut() && shadow.flewOver(roll.at())) {
            mark(Trait.FLEW_OVER);
        }
        if (roll.rimmedOut() && roll.sentBack()) {
            mark(Trait.SENT_BACK);
        }
    }
}

package org.cupbeam.edge.practice;

import java.util.EnumSet;
import java.util.Set;
import org.cupbeam.edge.practice.Truth.Trait;
import org.cupbeam.green.Ball;
import org.cupbeam.green.Hole;

/** One ball struck at the hole: what became of it, and what would have without a hole. */
final class Putt {
    private static final double FAST_MM_PER_S = 1400;
    private static final double NS_PER_S = 1e9;

    private final Turf turf;
    private final Body start;
    private final long struckNs;
    private final Roll roll;

    Putt(Turf turf, Cup cup, Body start, long struckNs) {
        this.turf = turf;
        this.start = start;
        this.struckNs = struckNs;
        roll = new Roll(turf, cup, start);
    }

    void run(Roll.Watch watch) {
        roll.run(watch);
    }

    long endedNs() {
        return struckNs + Math.round(roll.timeS() * NS_PER_S);
    }

    Truth truth(double fromMm, double limitMm, boolean felt, Shadow shadow) {
        Passage free = Passage.of(turf, start);
        boolean holed = roll.dropped();
        double finishMm = holed ? Double.NaN : roll.at().x;
        return new Truth(struckNs, endedNs(), fromMm, holed, finishMm, holed ? Double.NaN : roll.at().y,
                finishMm > limitMm, felt || shadow.touchedAny(), free.speedMmPerS(), free.restMm(),
                roll.rimmedOut(), turf.alongLine(), traits(free, shadow));
    }

    private Set<Trait> traits(Passage free, Shadow shadow) {
        Set<Trait> traits = EnumSet.noneOf(Trait.class);
        if (free.speedMmPerS() > FAST_MM_PER_S) {
            traits.add(Trait.FAST);
        }
        if (free.reached() && free.restMm() < Ball.DIAMETER_MM) {
            traits.add(Trait.DYING);
        }
        if (!roll.dropped()) {
            atRest(shadow, traits);
        }
        return traits;
    }

    private void atRest(Shadow shadow, Set<Trait> traits) {
        Body at = roll.at();
        if (shadow.blocksAny()) {
            traits.add(Trait.IN_BEAM);
        }
        if (at.fromHole() < Hole.RADIUS_MM + Ball.RADIUS_MM) {
            traits.add(Trait.ON_LIP);
        }
        if (roll.rimmedOut() && roll.lowestMm() < 0) {
            traits.add(Trait.POPPED_OUT);
        }
        if (roll.sentBack()) {
            traits.add(Trait.SENT_BACK);
        }
    }
}

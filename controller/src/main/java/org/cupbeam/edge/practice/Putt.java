package org.cupbeam.edge.practice;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.cupbeam.edge.practice.Truth.Trait;
import org.cupbeam.green.Ball;
import org.cupbeam.green.Hole;

/** One ball struck at the hole: what became of it, and what would have without a hole. */
final class Putt {
    private static final double FAST_MM_PER_S = 1400;
    private static final double POPPED_OUT_FROM_MM = 10;
    private static final double NS_PER_S = 1e9;
    private static final long FAR_NS = Long.MAX_VALUE / 4;

    private final Turf turf;
    private final double fromMm;
    private final Roll roll;
    private final int lights;
    private final Shadow shadow;
    private final Passage free;
    private final Shadow freeShadow;
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
        this.lights = lights.size();
        Body start = aim.start(fromMm);
        shadow = new Shadow(lights, start);
        roll = new Roll(turf, cup, start).run(shadow);
        freeShadow = new Shadow(lights, start);
        free = Passage.of(turf, start, freeShadow);
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
        return struckNs + ns(roll.timeS());
    }

    boolean holed() {
        return roll.dropped();
    }

    boolean rimmedOut() {
        return roll.rimmedOut();
    }

    /** When nothing that it might have done without the hole could still be to come. */
    long expectedUntilNs() {
        return Math.max(endedNs(), roll.rimmedOut() ? struckNs + ns(free.restS()) : 0);
    }

    /** Whether it blocked a beam of these at about this time, or would have had there been no hole. */
    boolean near(List<Integer> beams, long fromNs, long toNs) {
        return Stream.concat(shadow.changes().stream(), freeShadow.changes().stream())
                .anyMatch(change -> beams.contains(change.light())
                        && struckNs + change.timeNs() > fromNs && struckNs + change.timeNs() < toNs);
    }

    /** Whether it comes to some light, or to the hole, before a ball struck earlier has been gone for so long. */
    boolean overtakes(Putt before, long apartNs) {
        for (int light = 0; light < lights; light++) {
            if (first(light) < before.last(light) + apartNs) {
                return true;
            }
        }
        return firstAtHole() < before.lastAtHole() + apartNs;
    }

    private long first(int light) {
        return struckNs + shadow.changes().stream().filter(change -> change.light() == light)
                .mapToLong(Shadow.Change::timeNs).min().orElse(FAR_NS);
    }

    private long last(int light) {
        return struckNs + shadow.changes().stream().filter(change -> change.light() == light)
                .mapToLong(Shadow.Change::timeNs).max().orElse(-FAR_NS);
    }

    private long firstAtHole() {
        return free.reached() ? struckNs + ns(free.atHoleS()) : FAR_NS;
    }

    private long lastAtHole() {
        long there = free.reached() ? struckNs + ns(free.atHoleS()) : -FAR_NS;
        return holed() ? endedNs() : there;
    }

    private static long ns(double s) {
        return Math.round(s * NS_PER_S);
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
        if (roll.rimmedOut() && roll.lowestMm() < Ball.RADIUS_MM - POPPED_OUT_FROM_MM) {
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

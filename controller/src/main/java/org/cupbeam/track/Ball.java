package org.cupbeam.track;

/**
 * A ball that may be on its way: the crossings taken for its own, and its motion as they tell it.
 *
 * <p>A ball that touches the rim rolls on slower than it came, so what it does behind the hole is then a stretch of its
 * own ({@link #isSlowed()}).
 */
final class Ball {
    /** On a slope that is nearly too steep for the green a ball may seem never to stop. */
    private static final double LONGEST_S = 60;
    private final Lay lay;
    private final Crossings crossings;
    private final Roll approach = new Roll();
    private final Roll slowed = new Roll();
    private final Roll trial = new Roll();
    private int slowedFrom;
    private long struckNs;
    private long dueNs;
    private boolean unsure;

    Ball(Lay lay) {
        this.lay = lay;
        crossings = new Crossings(lay.beams);
    }

    /** A first crossing, by a ball that decelerates as the lane has taught. */
    void begin(int beam, long onNs, long offNs, LaneBelief lane) {
        struckNs = Sensor.NEVER;
        slowedFrom = -1;
        unsure = false;
        crossings.begin(onNs);
        approach.reset(lane.decelerationMmPerS2(), 2 * lane.decelerationSd());
        add(approach, beam, onNs, offNs);
    }

    private void add(Roll roll, int beam, long onNs, long offNs) {
        double onS = crossings.seconds(onNs);
        double offS = crossings.seconds(offNs);
        roll.cross(onS, offS, lay.positionMm[beam], lay.halfChordMm[beam]);
        crossings.add(beam, onS, offS);
    }

    /** How badly this crossing would fit as the ball's next: chi-square of two; infinite where it can't be. */
    double misfit(int beam, long onNs, long offNs) {
        double onS = crossings.seconds(onNs);
        double offS = crossings.seconds(offNs);
        if (onS <= earliestS(beam)) {
            return Double.POSITIVE_INFINITY;
        }
        trial.copyFrom(current());
        double misfit = trial.cross(onS, offS, lay.positionMm[beam], lay.halfChordMm[beam]);
        // Timing noise aside, it must still be rolling when it leaves.
        return trial.speedMmPerS(offS) < -20 ? Double.POSITIVE_INFINITY : misfit;
    }

    /** Before when it cannot be at a beam, by what was seen last; infinite for a beam that lies behind it. */
    double earliestS(int beam) {
        int last = crossings.lastBeam();
        if (beam <= last) {
            return Double.POSITIVE_INFINITY;
        }
        return lay.overlap(last, beam) ? crossings.onS(crossings.count() - 1) : crossings.lastS();
    }

    void cross(int beam, long onNs, long offNs) {
        add(current(), beam, onNs, offNs);
    }

    /** How badly it would fit if the ball's leading limb reached the beam then: chi-square of one. */
    double arrivalMisfit(int beam, long onNs) {
        double onS = crossings.seconds(onNs);
        if (onS <= earliestS(beam)) {
            return Double.POSITIVE_INFINITY;
        }
        trial.copyFrom(current());
        return trial.arrive(onS, lay.positionMm[beam], lay.halfChordMm[beam]);
    }

    /** The ball reached this beam and stopped in it. */
    void arrive(int beam, long onNs) {
        double onS = crossings.seconds(onNs);
        current().arrive(onS, lay.positionMm[beam], lay.halfChordMm[beam]);
        crossings.add(beam, onS, Double.NaN);
    }

    /** Begins a stretch behind the hole, slower than the ball came. */
    void slow(int beam, long onNs, long offNs, LaneBelief lane) {
        slowedFrom = crossings.count();
        slowed.reset(lane.decelerationMmPerS2(), lane.deflectedSd());
        add(slowed, beam, onNs, offNs);
    }

    /** Index of the first crossing behind the hole; the count of all where there is none. */
    int firstBehindHole() {
        int index = 0;
        while (index < crossings.count() && lay.isBeforeHole(crossings.beam(index))) {
            index++;
        }
        return index;
    }

    /** Whether it could have touched the rim unnoticed: it was seen before and behind the hole, and taken for free. */
    boolean mayPart() {
        int from = firstBehindHole();
        return !isSlowed() && from > 1 && from < crossings.count();
    }

    /** Like {@link #misfit}, if what lies behind the hole were a stretch of its own. */
    double partedMisfit(int beam, long onNs, long offNs, LaneBelief lane) {
        slowedFrom = firstBehindHole();
        retrace(slowed, slowedFrom, crossings.count(), lane);
        double misfit = misfit(beam, onNs, offNs);
        slowedFrom = -1;
        return misfit;
    }

    /** Parts the stretches before and behind the hole after all: together they are no free roll. */
    void part(LaneBelief lane) {
        slowedFrom = firstBehindHole();
        retrace(approach, 0, slowedFrom, lane);
        retrace(slowed, slowedFrom, crossings.count(), lane);
    }

    private void retrace(Roll roll, int from, int to, LaneBelief lane) {
        roll.reset(lane.decelerationMmPerS2(), roll == slowed ? lane.deflectedSd() : 2 * lane.decelerationSd());
        for (int i = from; i < to; i++) {
            int beam = crossings.beam(i);
            if (Double.isNaN(crossings.offS(i))) {
                roll.arrive(crossings.onS(i), lay.positionMm[beam], lay.halfChordMm[beam]);
            } else {
                roll.cross(crossings.onS(i), crossings.offS(i), lay.positionMm[beam], lay.halfChordMm[beam]);
            }
        }
    }

    /** Takes that stretch back: what it was made of was none of this ball's. */
    void unslow() {
        crossings.removeFrom(slowedFrom);
        slowedFrom = -1;
    }

    boolean isSlowed() {
        return slowedFrom >= 0;
    }

    /** Index of the first crossing of the stretch that decides the finish. */
    int lastStretchFrom() {
        return isSlowed() ? slowedFrom : 0;
    }

    /** How many crossings the approach has. */
    int approachCount() {
        return isSlowed() ? slowedFrom : crossings.count();
    }

    Roll current() {
        return isSlowed() ? slowed : approach;
    }

    Roll approach() {
        return approach;
    }

    Crossings crossings() {
        return crossings;
    }

    boolean hasPassedHole() {
        return !lay.isBeforeHole(crossings.lastBeam());
    }

    /** The latest time at which the ball could still roll. */
    long stopsNs() {
        Roll roll = current();
        double left = Math.min(LONGEST_S, Math.max(0, roll.stopS() - crossings.lastS()));
        return crossings.timeNs(crossings.lastS() + left * 1.1);
    }

    /** It may be no putt, unless something else than the pair that saw it says that it is. */
    void suspect() {
        unsure = true;
    }

    boolean isSuspect() {
        return unsure && crossings.count() <= 2;
    }

    /** Sets when it is to be settled, if nothing more is seen of it. */
    void due(long timeNs) {
        dueNs = timeNs;
    }

    long dueNs() {
        return dueNs;
    }

    void strike(long timeNs) {
        struckNs = timeNs;
    }

    boolean hasStrike() {
        return struckNs != Sensor.NEVER;
    }

    /** When it was struck; {@link Sensor#NEVER} where that is not known. */
    long struckNs() {
        return struckNs;
    }

    /** The first that was seen of it. */
    long firstNs() {
        return hasStrike() ? struckNs : crossings.originNs();
    }
}

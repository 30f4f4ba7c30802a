package org.cupbeam.track;

import org.cupbeam.green.GreenSpeed;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Rig;

/**
 * A ball on an ideal line: constant deceleration, no skid, no noise, straight through every beam.
 *
 * @param atS               when it is struck
 * @param fromMm            where it is then
 * @param speedMmPerS       and how fast
 * @param decelerationMmPerS2 what slows it
 * @param toMm              where it leaves the green: the hole, or somebody's hand; infinite where it rolls out
 * @param goneS             when it is picked up; infinite where it stays
 */
record FakeBall(double atS, double fromMm, double speedMmPerS, double decelerationMmPerS2, double toMm, double goneS) {
    private static final double RADIUS_MM = 42.67 / 2;

    /** One that stops at a place, on a green as the rig's file says. */
    static FakeBall stoppingAt(Rig rig, double atS, double fromMm, double finishMm) {
        double slows = decelerationMmPerS2(rig);
        return new FakeBall(atS, fromMm, Math.sqrt(2 * slows * (finishMm - fromMm)), slows,
                Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    /** One that would stop at a place were there no hole, and drops. */
    static FakeBall holedFor(Rig rig, double atS, double fromMm, double paceMm) {
        FakeBall free = stoppingAt(rig, atS, fromMm, paceMm);
        return new FakeBall(atS, fromMm, free.speedMmPerS, free.decelerationMmPerS2, 0, Double.POSITIVE_INFINITY);
    }

    static double decelerationMmPerS2(Rig rig) {
        return GreenSpeed.decelerationMmPerS2(rig.stimpFt(), rig.uphillPercent());
    }

    FakeBall pickedUpAt(double timeS) {
        return new FakeBall(atS, fromMm, speedMmPerS, decelerationMmPerS2, toMm, timeS);
    }

    /** It leaves the line there, as a ball does that somebody stops. */
    FakeBall asFarAs(double mm) {
        return new FakeBall(atS, fromMm, speedMmPerS, decelerationMmPerS2, mm, goneS);
    }

    double finishMm() {
        return fromMm + speedMmPerS * speedMmPerS / (2 * decelerationMmPerS2);
    }

    double stopsS() {
        return atS + speedMmPerS / decelerationMmPerS2;
    }

    double speedAtMmPerS(double mm) {
        return Math.sqrt(speedMmPerS * speedMmPerS - 2 * decelerationMmPerS2 * (mm - fromMm));
    }

    /** When its centre is at a place; infinite where it never is. */
    double timeAtS(double mm) {
        double root = speedMmPerS * speedMmPerS - 2 * decelerationMmPerS2 * (mm - fromMm);
        return root < 0 || mm > toMm ? Double.POSITIVE_INFINITY
                : atS + (speedMmPerS - Math.sqrt(root)) / decelerationMmPerS2;
    }

    /** Half of the way that its centre rolls while it blocks a beam. */
    static double halfChordMm(Beam beam) {
        double fromCentre = beam.heightMm() - RADIUS_MM;
        return Math.sqrt(RADIUS_MM * RADIUS_MM - fromCentre * fromCentre);
    }

    double blocksS(Beam beam) {
        double edgeMm = beam.positionMm() - halfChordMm(beam);
        return edgeMm < fromMm ? Double.POSITIVE_INFINITY : timeAtS(edgeMm);
    }

    /** When it lets the light through again: rolled out, picked up, or never. */
    double clearsS(Beam beam) {
        return Math.min(goneS, timeAtS(beam.positionMm() + halfChordMm(beam)));
    }
}

package org.cupbeam.studio.insight.make;

import org.cupbeam.studio.insight.chance.LogOdds;

/**
 * A player's stroke from what the beams measured: direction and pace each for itself, and the make rate that follows.
 *
 * @param decelerationMmPerS2 of a ball on the lines that were putted along
 */
public record StrokeFit(DirectionFit direction, PaceFit pace, double decelerationMmPerS2) implements Skill {
    private static final double LOG_STEP = 0.01;
    private static final double AIM_STEP_MM = 5;

    @Override
    public Stroke curve() {
        return stroke(0, 0, 0);
    }

    @Override
    public int putts() {
        return direction.putts();
    }

    @Override
    public double logOddsSd(double distanceMm) {
        double byDirection = slope(distanceMm, LOG_STEP, 0, 0) * direction.logSd();
        double byAim = slope(distanceMm, 0, AIM_STEP_MM, 0) * pace.aimSdMm();
        double byPace = slope(distanceMm, 0, 0, LOG_STEP) * pace.logSd();
        return Math.sqrt(byDirection * byDirection + byAim * byAim + byPace * byPace);
    }

    private double slope(double distanceMm, double logDirection, double aimMm, double logPace) {
        double up = LogOdds.of(stroke(logDirection, aimMm, logPace).at(distanceMm));
        double down = LogOdds.of(stroke(-logDirection, -aimMm, -logPace).at(distanceMm));
        return (up - down) / (2 * (logDirection + aimMm + logPace));
    }

    private Stroke stroke(double logDirection, double aimMm, double logPace) {
        return new Stroke(Math.exp(direction.logRad() + logDirection), pace.aimPastMm() + aimMm,
                pace.paceSd() * Math.exp(logPace), pace.mishitShare(), decelerationMmPerS2);
    }
}

package org.cupbeam.studio.insight.shot;

import java.util.Random;
import org.cupbeam.green.Capture;
import org.cupbeam.green.Hole;

/**
 * A player of whom everything is known, for tests. Livelier than what is fitted: each putt rolls on a green a little
 * quicker or slower than the last, the hole keeps a little more or less than the book says, and the beams err.
 *
 * @param directionSdDeg of the start
 * @param aimPastMm      meant past the hole
 * @param paceSd         of the length
 * @param mishitShare    of putts whose length is anything
 */
public record Golfer(double directionSdDeg, double aimPastMm, double paceSd, double mishitShare) {
    public static final double DECELERATION = 548.64;
    private static final double FIRST_BEAM_MM = -200;

    public static Golfer tour() {
        return new Golfer(1.0, 300, 0.065, 0.002);
    }

    public static Golfer club() {
        return new Golfer(1.5, 250, 0.10, 0.015);
    }

    public static Golfer beginner() {
        return new Golfer(2.4, 200, 0.16, 0.03);
    }

    /** What a putt did: where it would have stopped, how far beside the hole's centre it came by, and how it ended. */
    public record Rolled(double paceMm, double offMm, double speed, boolean holed, boolean rim, double restMm) {
        /** How far from the hole it came to rest. */
        public double leftMm(double distanceMm) {
            return Math.hypot(restMm, offMm * (1 + restMm / distanceMm));
        }
    }

    /** One putt, as it was. */
    public Rolled roll(Random random, double distanceMm) {
        double lengthMm = random.nextDouble() < mishitShare ? random.nextDouble() * 2 * (distanceMm + aimPastMm)
                : (distanceMm + aimPastMm) * (1 + paceSd * random.nextGaussian());
        double paceMm = lengthMm - distanceMm;
        double offMm = Math.abs(distanceMm * Math.tan(Math.toRadians(directionSdDeg) * random.nextGaussian()));
        double deceleration = DECELERATION * (1 + 0.01 * random.nextGaussian());
        double speed = Math.sqrt(2 * deceleration * Math.max(0, paceMm));
        boolean reached = paceMm > -Math.sqrt(Math.max(0, Hole.RADIUS_MM * Hole.RADIUS_MM - offMm * offMm));
        boolean holed = reached && speed <= Capture.limitMmPerS(offMm) * (1 + 0.04 * random.nextGaussian());
        boolean rim = !holed && reached && paceMm > 0 && offMm < Hole.RADIUS_MM;
        return new Rolled(paceMm, offMm, speed, holed, rim, rim ? paceMm * random.nextDouble(0.5, 1) : paceMm);
    }

    /** One putt as a lane with beams before and behind the hole sees it. */
    public Shot putt(Random random, long session, long atMs, double distanceMm) {
        Rolled rolled = roll(random, distanceMm);
        Shot shot = Shot.of(session, atMs, distanceMm, rolled.holed);
        if (rolled.paceMm < FIRST_BEAM_MM) {
            return shot.finishingBelow(FIRST_BEAM_MM);
        }
        double errorMm = 8 * random.nextGaussian();
        Shot seen = shot.rolling(rolled.paceMm + errorMm,
                Math.max(0, rolled.speed * (1 + 0.005 * random.nextGaussian())));
        if (rolled.holed) {
            return seen;
        }
        Shot finished = seen.finishing(rolled.restMm + errorMm);
        return rolled.rim ? finished.offTheRim() : finished;
    }

    /** How often it holes from here, by putting so often. */
    public double makeRate(Random random, double distanceMm, int putts) {
        int made = 0;
        for (int i = 0; i < putts; i++) {
            made += putt(random, 0, 0, distanceMm).holed() ? 1 : 0;
        }
        return (double) made / putts;
    }
}

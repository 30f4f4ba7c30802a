package org.cupbeam.studio.insight.make;

import java.util.List;
import org.cupbeam.studio.insight.chance.Bell;
import org.cupbeam.studio.insight.chance.Estimate;

/**
 * A player's pace: how far past the hole putts are meant to stop, and how the length of the roll scatters about what was
 * meant, in proportion to it. A share of putts is mishit: of any length, and kept out of the scatter. Putts that stopped
 * short of the first beam count for as much as that tells.
 *
 * @param aimPastMm   past the hole
 * @param aimSdMm     how well that is known
 * @param paceSd      standard deviation of the length, as a share of it
 * @param logSd       how well its logarithm is known
 * @param mishitShare of all putts
 * @param putts       whose pace was measured
 */
public record PaceFit(double aimPastMm, double aimSdMm, double paceSd, double logSd, double mishitShare, int putts) {
    /** Held likely beforehand: a foot past (Gelman 2019 takes so much for the tour), give or take. */
    private static final double USUAL_AIM_MM = 300;
    private static final double USUAL_AIM_SD_MM = 250;
    /** Between the tour's 6.5 % and amateurs' 8.5 % (Bansal and Broadie 2008), and so many putts' worth of belief. */
    private static final double USUAL_SD = 0.08;
    private static final double USUAL_PUTTS = 6;
    private static final double USUAL_MISHIT = 0.02;
    private static final double MISHIT_PUTTS = 15;
    /** A mishit ball rolls any length up to this many times what was meant. */
    static final double MISHIT_UP_TO = 2.5;
    private static final int ROUNDS_MAX = 200;
    private static final double SETTLED = 1e-5;

    /** By expectation and maximisation in turn, from what is held likely. */
    public static PaceFit of(PaceTally tally) {
        return of(tally, new PaceFit(USUAL_AIM_MM, USUAL_AIM_SD_MM, USUAL_SD, 1, USUAL_MISHIT, 0));
    }

    /** The same, begun from a fit that cannot be far off, which is quicker. */
    public static PaceFit of(PaceTally tally, PaceFit start) {
        List<PaceTally.Rolls> rolls = tally.rolls();
        PaceFit fit = start;
        for (int round = 0; round < ROUNDS_MAX; round++) {
            PaceFit next = new Sums(fit, rolls).fit();
            boolean settled = Math.abs(next.paceSd / fit.paceSd - 1) < SETTLED
                    && Math.abs(next.aimPastMm - fit.aimPastMm) < SETTLED * USUAL_AIM_MM;
            fit = next;
            if (settled) {
                break;
            }
        }
        return fit;
    }

    /** The scatter in hundredths of the length. */
    public Estimate percent() {
        return Estimate.ofLog(Math.log(paceSd), logSd).times(100);
    }

    /** How far past the hole, in mm. */
    public Estimate aimMm() {
        return Estimate.normal(aimPastMm, aimSdMm);
    }

    /** The chance that a mishit ball rolls further than this, as a share of the length meant. */
    static double mishitBeyond(double share) {
        return Math.max(0, 1 - share / MISHIT_UP_TO);
    }

    /** What one round adds up. */
    private static final class Sums {
        private final PaceFit from;
        private double meant;
        private double aimWeight = 1 / (USUAL_AIM_SD_MM * USUAL_AIM_SD_MM);
        private double aim = USUAL_AIM_MM * aimWeight;
        private double squares = USUAL_PUTTS * USUAL_SD * USUAL_SD;
        private double scatterTold = 2 * USUAL_PUTTS;
        private double aimTold = 1 / (USUAL_AIM_SD_MM * USUAL_AIM_SD_MM);
        private double mishit;
        private int all;
        private int seen;

        Sums(PaceFit from, List<PaceTally.Rolls> rolls) {
            this.from = from;
            rolls.forEach(this::add);
        }

        private void add(PaceTally.Rolls each) {
            double meantMm = each.distanceMm() + from.aimPastMm;
            double z = (each.paceMm() - from.aimPastMm) / (from.paceSd * meantMm);
            all += each.putts();
            if (each.seen()) {
                seen += each.putts();
                double well = share(Bell.density(z) / from.paceSd, 1 / MISHIT_UP_TO);
                // What is not known for sure, whether a putt was mishit, takes away from what it tells (T. A. Louis, 1982).
                double doubt = well * (1 - well);
                scatterTold += each.putts() * (2 * well * z * z - doubt * (z * z - 1) * (z * z - 1));
                double sdMm = from.paceSd * meantMm;
                aimTold += each.putts() * (well - doubt * z * z) / (sdMm * sdMm);
                take(each.putts() * well, meantMm, z, z * z);
            } else {
                double below = Math.max(1e-300, Bell.below(z));
                double well = share(below, 1 - mishitBeyond((each.distanceMm() + each.paceMm()) / meantMm));
                double slope = Bell.density(z) / below;
                // Mean and mean square of a normal value that is known to lie below z.
                take(each.putts() * well, meantMm, -slope, 1 - z * slope);
            }
        }

        private double share(double well, double mishitHere) {
            double struck = (1 - from.mishitShare) * well;
            return struck / (struck + from.mishitShare * mishitHere);
        }

        private void take(double putts, double meantMm, double z, double zSquare) {
            double sdMm = from.paceSd * meantMm;
            double weight = putts / (sdMm * sdMm);
            meant += putts;
            aimWeight += weight;
            aim += weight * (from.aimPastMm + z * sdMm);
            squares += putts * zSquare * from.paceSd * from.paceSd;
        }

        private PaceFit fit() {
            mishit = all - meant;
            return new PaceFit(aim / aimWeight, Math.sqrt(1 / aimTold), Math.sqrt(squares / (USUAL_PUTTS + meant)),
                    Math.sqrt(1 / Math.max(USUAL_PUTTS, scatterTold)),
                    (USUAL_MISHIT * MISHIT_PUTTS + mishit) / (MISHIT_PUTTS + all), seen);
        }
    }
}

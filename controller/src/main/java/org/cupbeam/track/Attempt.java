package org.cupbeam.track;

/**
 * One putt, resolved.
 *
 * @param timeNs          time of its first evidence, on the edges' clock
 * @param resolvedNs      when nothing could change it any more, same clock
 * @param outcome         holed or missed
 * @param finishMm        where the ball's centre came to rest; NaN when holed or not known
 * @param finishSdMm      standard deviation of that; NaN where there is no estimate
 * @param betweenLowMm    lower end of the 95 % interval or hard bound; NaN where unbounded or holed
 * @param betweenHighMm   upper end, likewise
 * @param speedAtHoleMmPerS the speed at the hole's centre had there been no hole; NaN when it did not get there or is not known
 * @param paceMm          where it would have stopped had there been no hole; NaN where not known
 * @param rim             it touched the rim and stayed out, as far as the beams can tell
 */
public record Attempt(long timeNs, long resolvedNs, Outcome outcome, double finishMm, double finishSdMm,
                      double betweenLowMm, double betweenHighMm, double speedAtHoleMmPerS, double paceMm,
                      boolean rim) {

    /** How a putt ended. */
    public enum Outcome { HOLED, MISSED }

    /**
     * A miss that no sensor saw, entered by somebody.
     *
     * @param beforeMm the first place at which a sensor would have seen it; NaN where there is none
     */
    public static Attempt unseen(long timeNs, double beforeMm) {
        return Verdict.missedUnseen(timeNs, timeNs, beforeMm);
    }

    public boolean holed() {
        return outcome == Outcome.HOLED;
    }

    /** Whether it is a miss that finished beyond a limit; by its finish, or by its lower bound where it has none. */
    public boolean overshoots(double limitMm) {
        return !holed() && (Double.isNaN(finishMm) ? betweenLowMm > limitMm : finishMm > limitMm);
    }
}

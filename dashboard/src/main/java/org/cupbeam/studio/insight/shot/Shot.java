package org.cupbeam.studio.insight.shot;

/**
 * One putt of a player that counts. What is not known is NaN.
 *
 * @param session           the player's go at practice that it belongs to; putts of one come one after the other
 * @param atMs              when, in ms since 1970, UTC
 * @param distanceMm        it was putted from, above 0
 * @param holed             it went in
 * @param finishMm          where a miss came to rest along the line, past the hole positive
 * @param finishBelowMm     of a miss without a finish, what it must lie below: short of the first beam
 * @param paceMm            where it would have stopped had there been no hole, past it positive
 * @param speedAtHoleMmPerS its speed at the hole had there been no hole
 * @param rim               it touched the rim and stayed out
 * @param breaks            which way it turns
 * @param lie               which way it lies
 * @param stimpFt           the green's speed at that time
 * @param stimpSdFt         how well that is known, standard deviation
 */
public record Shot(long session, long atMs, double distanceMm, boolean holed, double finishMm, double finishBelowMm,
                   double paceMm, double speedAtHoleMmPerS, boolean rim, Break breaks, Lie lie, double stimpFt,
                   double stimpSdFt) {
    private static final double NONE = Double.NaN;

    public Shot {
        if (!(distanceMm > 0 && distanceMm < 1e6)) {
            throw new IllegalArgumentException("a putt comes from further than 0 and nearer than 1 km, not "
                    + distanceMm + " mm");
        }
    }

    /** A putt of which only the outcome is known. */
    public static Shot of(long session, long atMs, double distanceMm, boolean holed) {
        return new Shot(session, atMs, distanceMm, holed, NONE, NONE, NONE, NONE, false, Break.UNKNOWN, Lie.UNKNOWN,
                NONE, NONE);
    }

    /** With the pace that the beams measured. */
    public Shot rolling(double pace, double speedAtHole) {
        return new Shot(session, atMs, distanceMm, holed, finishMm, finishBelowMm, pace, speedAtHole, rim, breaks, lie,
                stimpFt, stimpSdFt);
    }

    /** With the place where it came to rest. */
    public Shot finishing(double mm) {
        return new Shot(session, atMs, distanceMm, holed, mm, NONE, paceMm, speedAtHoleMmPerS, rim, breaks, lie,
                stimpFt, stimpSdFt);
    }

    /** With no more known of its finish than that it lies short of this. */
    public Shot finishingBelow(double mm) {
        return new Shot(session, atMs, distanceMm, holed, NONE, mm, paceMm, speedAtHoleMmPerS, rim, breaks, lie,
                stimpFt, stimpSdFt);
    }

    /** A miss that touched the rim. */
    public Shot offTheRim() {
        return new Shot(session, atMs, distanceMm, holed, finishMm, finishBelowMm, paceMm, speedAtHoleMmPerS, true,
                breaks, lie, stimpFt, stimpSdFt);
    }

    /** Of this kind. */
    public Shot tagged(Break turning, Lie lying) {
        return new Shot(session, atMs, distanceMm, holed, finishMm, finishBelowMm, paceMm, speedAtHoleMmPerS, rim,
                turning, lying, stimpFt, stimpSdFt);
    }

    /** On a green of this speed. */
    public Shot onGreen(double ft, double sdFt) {
        return new Shot(session, atMs, distanceMm, holed, finishMm, finishBelowMm, paceMm, speedAtHoleMmPerS, rim,
                breaks, lie, ft, sdFt);
    }

    /** Whether its pace was measured. */
    public boolean hasPace() {
        return !Double.isNaN(paceMm);
    }

    /** Whether it is a miss whose place of rest is known. */
    public boolean hasFinish() {
        return !Double.isNaN(finishMm);
    }
}

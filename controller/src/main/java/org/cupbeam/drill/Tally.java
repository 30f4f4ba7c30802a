package org.cupbeam.drill;

/**
 * What a run adds up to.
 *
 * @param attempts     so far
 * @param holed        of these
 * @param finishes     misses whose finish is known
 * @param finishTenths sum of these finishes' distances from the hole, in tenths of a mm: whole, so that no order of
 *                     adding changes it
 */
public record Tally(int attempts, int holed, int finishes, long finishTenths) {
    static final Tally NONE = new Tally(0, 0, 0, 0);

    Tally plus(Putt putt) {
        boolean known = putt.finishMm().isPresent();
        long tenths = known ? Math.round(10 * Math.abs(putt.finishMm().getAsDouble())) : 0;
        return new Tally(attempts + 1, holed + (putt.holed() ? 1 : 0), finishes + (known ? 1 : 0),
                finishTenths + tenths);
    }

    /** The misses' mean distance from the hole, in mm: 0 without a miss, infinite where no finish is known. */
    public double meanFinishMm() {
        if (attempts == holed) {
            return 0;
        }
        return finishes == 0 ? Double.POSITIVE_INFINITY : finishTenths / (10.0 * finishes);
    }
}

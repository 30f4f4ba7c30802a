package org.cupbeam.drill;

import java.util.OptionalDouble;

/**
 * What the rules of play need to know of one attempt. Lengths are kept to a tenth of a millimetre, as they are written
 * everywhere, so that a score worked out again from what was written comes out the same.
 *
 * @param finishMm  where a miss came to rest, past the hole positive; none when holed or not known
 * @param atLeastMm of a miss without a finish, how far it must have gone at least; none where not known
 */
public record Putt(boolean holed, OptionalDouble finishMm, OptionalDouble atLeastMm) {
    /** Further than this, either way, no ball finishes. */
    public static final double FURTHEST_MM = 1_000_000;

    public Putt {
        if (holed && (finishMm.isPresent() || atLeastMm.isPresent())) {
            throw new IllegalArgumentException("a holed putt has no finish");
        }
        atLeastMm = finishMm.isPresent() ? OptionalDouble.empty() : toTenths(atLeastMm);
        finishMm = toTenths(finishMm);
    }

    /** A holed putt. */
    public static Putt sunk() {
        return new Putt(true, OptionalDouble.empty(), OptionalDouble.empty());
    }

    /** A miss that came to rest here. */
    public static Putt missedAt(double finishMm) {
        return new Putt(false, OptionalDouble.of(finishMm), OptionalDouble.empty());
    }

    /** A miss of which no more is known. */
    public static Putt missed() {
        return new Putt(false, OptionalDouble.empty(), OptionalDouble.empty());
    }

    /** An attempt as a tracker gives it: NaN stands for what is not known, and what a holed putt lacks is ignored. */
    public static Putt of(boolean holed, double finishMm, double atLeastMm) {
        return holed ? sunk() : new Putt(false, known(finishMm), known(atLeastMm));
    }

    /** Whether it is a miss beyond the limit: by its finish, or where it has none by how far it must have gone. */
    public boolean overshoots(double limitMm) {
        return !holed && finishMm.orElse(atLeastMm.orElse(Double.NEGATIVE_INFINITY)) > limitMm;
    }

    private static OptionalDouble known(double mm) {
        return Double.isNaN(mm) ? OptionalDouble.empty() : OptionalDouble.of(mm);
    }

    private static OptionalDouble toTenths(OptionalDouble mm) {
        if (mm.isEmpty()) {
            return mm;
        }
        double value = mm.getAsDouble();
        if (!(Math.abs(value) <= FURTHEST_MM)) {
            throw new IllegalArgumentException("no ball finishes at " + value + " mm");
        }
        return OptionalDouble.of(Math.round(10 * value) / 10.0);
    }
}

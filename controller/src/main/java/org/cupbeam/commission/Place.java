package org.cupbeam.commission;

/**
 * Where a beam stands as far as anybody measured it.
 *
 * @param mm   from the hole's centre
 * @param sdMm standard deviation; huge where nobody did
 */
record Place(double mm, double sdMm) {
    static final Place UNKNOWN = new Place(0, 1e5);

    boolean known() {
        return sdMm < UNKNOWN.sdMm;
    }
}

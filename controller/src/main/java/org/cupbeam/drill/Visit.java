package org.cupbeam.drill;

/**
 * A stay at a station, from arriving to leaving it.
 *
 * @param number   of the visit in its run, from 1
 * @param left     balls still to putt in it
 * @param attempts so far
 * @param holed    so far
 */
public record Visit(int number, int left, int attempts, int holed) {

    Visit after(boolean ballHoled) {
        return new Visit(number, left - 1, attempts + 1, holed + (ballHoled ? 1 : 0));
    }

    Visit withoutOneMore() {
        return new Visit(number, left - 1, attempts, holed);
    }
}

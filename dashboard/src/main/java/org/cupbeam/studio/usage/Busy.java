package org.cupbeam.studio.usage;

/**
 * How much was played, and how much could have been. Times are summed over lanes: two lanes open for an hour are two
 * hours. A lane is in play from putt to putt, where no more than five minutes lie between them.
 *
 * @param openMs   while the studio was open
 * @param playMs   in play while it was open
 * @param closedMs in play while it was closed
 * @param putts    at any time
 * @param holed    of these
 */
public record Busy(long openMs, long playMs, long closedMs, int putts, int holed) {
    static final Busy NOTHING = new Busy(0, 0, 0, 0, 0);

    /** Which share of the open time was played in, 0 to 1; NaN where it was never open. */
    public double share() {
        return openMs == 0 ? Double.NaN : (double) playMs / openMs;
    }

    /** Both together. */
    public Busy plus(Busy other) {
        return new Busy(openMs + other.openMs, playMs + other.playMs, closedMs + other.closedMs, putts + other.putts,
                holed + other.holed);
    }
}

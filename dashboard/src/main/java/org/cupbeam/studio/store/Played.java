package org.cupbeam.studio.store;

import java.util.Collection;
import java.util.List;

/** What lanes did in the quarter hours of a stretch of time, summed up. */
public interface Played {
    /**
     * Of a quarter hour, all lanes together.
     *
     * @param quarter of an hour since 1970, UTC
     * @param usedMs  in play within it, with its part of what lies between its putts and the next ones, each lane's summed
     * @param putts   that count
     */
    record InQuarter(long quarter, long usedMs, int putts, int holed) {
    }

    /** Of a lane, the quarter hours together. */
    record OnLane(int lane, long usedMs, int putts, int holed) {
    }

    /** Of a lane in a quarter hour. */
    record Part(int lane, long quarter, long usedMs) {
    }

    /** Those in which anybody putted, in order. */
    List<InQuarter> quarters();

    /** Those that were putted on. */
    List<OnLane> lanes();

    /** The same, of these quarters alone. */
    List<OnLane> lanesIn(Collection<Long> quarters);

    /** Each lane's in these quarters. */
    List<Part> parts(Collection<Long> quarters);
}

package org.cupbeam.lane;

import java.util.function.Supplier;
import org.cupbeam.edge.EdgeSource;
import org.cupbeam.edge.practice.Player;
import org.cupbeam.edge.practice.PracticeLane;
import org.cupbeam.edge.practice.PracticeSource;
import org.cupbeam.edge.practice.Tempo;

/** A simulated green that is putted on as a lane's play says: from the next station, by whose turn it is. */
public final class PracticeGreen {
    private static final double PUTTER_MM = 914.4;
    private static final int STATIONS = 5;

    private PracticeGreen() {
    }

    /**
     * Edges for a lane. Where nothing is played somebody putts nevertheless, from one station after the other.
     *
     * @param seed  the same seed and the same play give the same putts
     * @param next  the lane's next putt
     * @param tempo its clock is to be the lane's too
     */
    public static EdgeSource of(long seed, PracticeLane green, Tempo tempo, Supplier<UpNext> next) {
        int[] putts = {0};
        return new PracticeSource(seed, green, tempo, () -> {
            double stationMm = next.get().stationMm();
            return Double.isNaN(stationMm) ? PUTTER_MM * (1 + putts[0]++ % STATIONS) : stationMm;
        }, () -> player(next.get()), truth -> { });
    }

    /** Some putt better than others, and always do. */
    private static Player player(UpNext next) {
        return next.player() != null && next.player().hashCode() % 2 == 0 ? Player.good() : Player.usual();
    }
}

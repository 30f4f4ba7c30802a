package org.cupbeam.studio.coach;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.cupbeam.studio.insight.make.CurveFit;
import org.cupbeam.studio.insight.make.MakeCurve;
import org.cupbeam.studio.insight.make.Peers;
import org.cupbeam.studio.insight.make.Prior;
import org.cupbeam.studio.insight.make.Shape;
import org.cupbeam.studio.insight.make.Tries;
import org.cupbeam.studio.store.PlayerTallies;
import org.cupbeam.studio.store.Store;

/**
 * The studio's own players of the last year, as a company in which nobody is named.
 *
 * @param curves  their make rates, of those with enough putts to have one
 * @param busiest the numbers of those with the most putts, the most first
 */
record Company(List<MakeCurve> curves, List<Integer> busiest) {
    private static final int BUSIEST_MAX = 12;
    private static final long YEAR_MS = 366L * 86_400_000;
    private static final int PUTTS_MIN = 200;
    private static final int PLAYERS_MAX = 500;

    Company {
        curves = List.copyOf(curves);
        busiest = List.copyOf(busiest);
    }

    static Company of(Store store, long nowMs) {
        List<MakeCurve> curves = new ArrayList<>();
        Map<Integer, List<PlayerTallies>> byPlayer = store.read(h -> PlayerTallies.since(h, nowMs - YEAR_MS));
        for (List<PlayerTallies> tallies : byPlayer.values()) {
            if (curves.size() < PLAYERS_MAX && putts(tallies) >= PUTTS_MIN) {
                curves.add(CurveFit.of(Shape.ANGLE_AND_DISTANCE, Prior.ANGLE_AND_DISTANCE, Tries.together(tallies.stream()
                        .map(each -> new Tries(each.distanceMm(), each.tries(), each.made())).toList())).curve());
            }
        }
        return new Company(curves, byPlayer.keySet().stream()
                .sorted(Comparator.comparingInt((Integer player) -> -putts(byPlayer.get(player)))).limit(BUSIEST_MAX).toList());
    }

    private static int putts(List<PlayerTallies> tallies) {
        return tallies.stream().mapToInt(PlayerTallies::tries).sum();
    }

    Optional<Peers> from(double distanceMm) {
        return Peers.from(curves, distanceMm);
    }
}

package org.cupbeam.studio.coach;

import java.util.ArrayList;
import java.util.List;
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
 * @param curves their make rates, of those with enough putts to have one
 */
record Company(List<MakeCurve> curves) {
    private static final long YEAR_MS = 366L * 86_400_000;
    private static final int PUTTS_MIN = 200;
    private static final int PLAYERS_MAX = 500;

    Company {
        curves = List.copyOf(curves);
    }

    static Company of(Store store, long nowMs) {
        List<MakeCurve> curves = new ArrayList<>();
        for (List<PlayerTallies> tallies : store.read(h -> PlayerTallies.since(h, nowMs - YEAR_MS)).values()) {
            if (curves.size() < PLAYERS_MAX && tallies.stream().mapToInt(PlayerTallies::tries).sum() >= PUTTS_MIN) {
                curves.add(CurveFit.of(Shape.ANGLE_AND_DISTANCE, Prior.ANGLE_AND_DISTANCE, Tries.together(tallies.stream()
                        .map(each -> new Tries(each.distanceMm(), each.tries(), each.made())).toList())).curve());
            }
        }
        return new Company(curves);
    }

    Optional<Peers> from(double distanceMm) {
        return Peers.from(curves, distanceMm);
    }
}

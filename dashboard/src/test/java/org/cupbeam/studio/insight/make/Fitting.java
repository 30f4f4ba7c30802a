package org.cupbeam.studio.insight.make;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.cupbeam.studio.insight.shot.Golfer;
import org.cupbeam.studio.insight.shot.Sessions;
import org.cupbeam.studio.insight.shot.Shot;

/** Fits of simulated putts. */
final class Fitting {
    private Fitting() {
    }

    /** Putts from a ladder's stations, one after the other. */
    static List<Shot> ladder(Golfer golfer, Random random, int putts) {
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < putts; i++) {
            shots.add(golfer.putt(random, i / 60, i * 20_000L, 914.4 * (1 + i % 8)));
        }
        return shots;
    }

    static CurveFit makesAlone(List<Shot> shots) {
        return Tallies.of(Sessions.of(shots)).makesAlone();
    }

    static StrokeFit measured(List<Shot> shots) {
        return Tallies.of(Sessions.of(shots)).stroke();
    }
}

package org.cupbeam.studio.insight.make;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.cupbeam.studio.insight.shot.Golfer;
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
        Map<Double, int[]> counts = new TreeMap<>();
        for (Shot shot : shots) {
            int[] count = counts.computeIfAbsent(shot.distanceMm(), key -> new int[2]);
            count[0]++;
            count[1] += shot.holed() ? 1 : 0;
        }
        return CurveFit.of(Shape.ANGLE_AND_DISTANCE, Prior.ANGLE_AND_DISTANCE, counts.entrySet().stream()
                .map(each -> new Tries(each.getKey(), each.getValue()[0], each.getValue()[1])).toList());
    }

    static StrokeFit measured(List<Shot> shots) {
        DirectionTally direction = new DirectionTally();
        PaceTally pace = new PaceTally();
        for (Shot shot : shots) {
            if (shot.hasPace()) {
                pace.add(shot.distanceMm(), shot.paceMm());
                direction.add(Opening.halfAngleRad(shot.distanceMm(),
                        Opening.halfWidthMm(shot.paceMm(), shot.speedAtHoleMmPerS())), shot.holed());
            } else {
                pace.addBelow(shot.distanceMm(), shot.finishBelowMm());
            }
        }
        return new StrokeFit(DirectionFit.of(direction), PaceFit.of(pace), Golfer.DECELERATION);
    }
}

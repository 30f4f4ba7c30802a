package org.cupbeam.studio.coach;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.studio.insight.Question;
import org.cupbeam.studio.insight.shot.Break;
import org.cupbeam.studio.insight.shot.Lie;
import org.cupbeam.studio.insight.shot.Shot;
import org.cupbeam.studio.insight.words.Units;

/**
 * Works out made-up putts, so that the machine has compiled what it takes by the time that somebody asks: the first time in
 * a fresh process is several times as slow as the tenth. What comes of it is thrown away.
 */
final class Rehearsal {
    private static final int ROUNDS = 12;
    private static final int PUTTS = 8_000;
    private static final int A_SESSION = 60;
    private static final double STEP_MM = 914.4;

    private Rehearsal() {
    }

    static void run() {
        Question question = Question.about(DrillFile.preset("ladder"), STEP_MM, Units.METRIC, ZoneOffset.UTC);
        for (int round = 0; round < ROUNDS; round++) {
            Portrait.of(shots(new Random(round)), question);
        }
    }

    private static List<Shot> shots(Random random) {
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < PUTTS; i++) {
            double distanceMm = STEP_MM * (1 + random.nextInt(9));
            double paceMm = 300 + 0.09 * distanceMm * random.nextGaussian();
            boolean holed = random.nextDouble() < 1 / (1 + Math.pow(distanceMm / 2400, 2));
            Shot shot = Shot.of(i / A_SESSION, i * 60_000L, distanceMm, holed)
                    .tagged(Break.values()[random.nextInt(3)], Lie.values()[random.nextInt(3)]).onGreen(10, 0.2)
                    .rolling(paceMm, Math.sqrt(Math.max(0, 2 * 548 * paceMm)));
            shots.add(holed ? shot : shot.finishing(paceMm));
        }
        return shots;
    }
}

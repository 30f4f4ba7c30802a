package org.cupbeam.studio.insight.weak;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.cupbeam.studio.insight.chance.Proportion;
import org.cupbeam.studio.insight.make.Stroke;
import org.cupbeam.studio.insight.shot.Break;
import org.cupbeam.studio.insight.shot.Golfer;
import org.cupbeam.studio.insight.shot.Lie;
import org.cupbeam.studio.insight.shot.Sessions;
import org.cupbeam.studio.insight.shot.Shot;
import org.cupbeam.studio.insight.words.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MissesTest {
    @Test
    void missesAreSortedByWhatIsKnownOfThem() {
        Shot miss = Shot.of(1, 0, 3000, false);
        Misses misses = Misses.of(Sessions.of(List.of(Shot.of(1, 0, 3000, true).rolling(300, 500),
                miss.rolling(-150, 0).finishing(-150), miss.finishingBelow(-200), miss.rolling(1200, 1100).finishing(1200),
                miss.rolling(400, 600).offTheRim().finishing(100), miss, miss.finishing(300))), 914.4);
        assertThat(misses.stoppedShort()).isEqualTo(new Proportion(2, 4));
        assertThat(misses.ranPast()).isEqualTo(new Proportion(1, 5));
        assertThat(misses.lippedOut()).isEqualTo(new Proportion(1, 3));
        assertThat(misses.inWords()).isEmpty();
        assertThat(misses.pastShare()).isCloseTo(3 / 15.0, within(1e-12));
    }

    @Test
    void manyMissesAreSaid() {
        Random random = new Random(2);
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 3000; i++) {
            shots.add(Golfer.club().putt(random, 1, i, 3600));
        }
        assertThat(Misses.of(Sessions.of(shots), 914.4).inWords()).satisfiesExactly(
                first -> assertThat(first).matches("Of your misses \\d\\d in 100 \\(\\d\\d to \\d\\d\\) stop short of the hole\\."),
                second -> assertThat(second).matches("\\d+ in 100 misses run past the limit\\."),
                third -> assertThat(third).matches("\\d+ in 100 misses touch the rim and stay out\\."));
    }

    /** Against two putts, simulated with where each comes to rest beside the line, too. */
    @ParameterizedTest
    @CsvSource({"3000", "6000", "9000", "12000"})
    void threePuttsComeAsOftenAsTheStrokeSays(double distanceMm) {
        for (Golfer golfer : List.of(Golfer.tour(), Golfer.club(), Golfer.beginner())) {
            Stroke stroke = new Stroke(Math.toRadians(golfer.directionSdDeg()), golfer.aimPastMm(), golfer.paceSd(),
                    golfer.mishitShare(), Golfer.DECELERATION);
            Random random = new Random(5);
            int putts = 20_000;
            int three = 0;
            for (int i = 0; i < putts; i++) {
                Golfer.Rolled first = golfer.roll(random, distanceMm);
                three += !first.holed() && !golfer.roll(random, Math.max(60, first.leftMm(distanceMm))).holed() ? 1 : 0;
            }
            double share = (double) three / putts;
            assertThat(stroke.threePutts(distanceMm, stroke)).isCloseTo(share, within(0.015 + 0.2 * share));
        }
    }

    @Test
    void paceThatDiffersBySlopeIsFound() {
        Random random = new Random(6);
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 600; i++) {
            Lie lie = i % 2 == 0 ? Lie.UPHILL : Lie.DOWNHILL;
            Golfer golfer = new Golfer(1.3, lie == Lie.UPHILL ? 100 : 500, 0.08, 0.005);
            shots.add(golfer.putt(random, 1, i, 2000 + 500 * (i % 5)).tagged(Break.STRAIGHT, lie));
        }
        PaceByLie pace = PaceByLie.of(Sessions.of(shots));
        assertThat(pace.furtherDownhillMm().orElseThrow()).isBetween(300.0, 500.0);
        assertThat(pace.inWords(Units.METRIC)).matches("Downhill putts roll on average \\d\\d cm further past the hole than "
                + "uphill ones, of \\d+ measured putts\\.");
        assertThat(PaceByLie.of(Sessions.of(shots.subList(0, 10))).inWords(Units.METRIC)).isEmpty();
    }
}

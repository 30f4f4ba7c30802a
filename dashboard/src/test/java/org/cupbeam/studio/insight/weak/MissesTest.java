package org.cupbeam.studio.insight.weak;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.cupbeam.studio.insight.chance.Proportion;
import org.cupbeam.studio.insight.make.Stroke;
import org.cupbeam.studio.insight.make.Tallies;
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
                second -> assertThat(second).matches("\\d+ of 100 misses run past the limit\\."),
                third -> assertThat(third).matches("\\d+ of 100 misses touch the rim and stay out\\."));
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
        StrokeByTrait stroke = byTrait(shots);
        assertThat(stroke.furtherDownhillMm().orElseThrow()).isBetween(300.0, 500.0);
        assertThat(stroke.wider()).isEmpty();
        assertThat(stroke.inWords(Units.METRIC)).singleElement().asString().matches(
                "Downhill putts roll on average \\d\\d cm further past the hole than uphill ones\\.");
        assertThat(byTrait(shots.subList(0, 40)).inWords(Units.METRIC)).isEmpty();
    }

    @Test
    void scatterThatIsWiderOnOneKindIsFoundAndSaid() {
        Random random = new Random(7);
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 900; i++) {
            Break breaks = Break.values()[i % 3];
            Lie lie = Lie.values()[random.nextInt(3)];
            Golfer golfer = new Golfer(breaks == Break.RIGHT_TO_LEFT ? 2.2 : 1.3, 300, lie == Lie.DOWNHILL ? 0.13 : 0.08, 0.005);
            shots.add(golfer.putt(random, 1, i, 2000 + 500 * random.nextInt(5)).tagged(breaks, lie));
        }
        assertThat(byTrait(shots).wider()).extracting(each -> each.trait() + (each.direction() ? " direction" : " pace"))
                .containsExactlyInAnyOrder("RIGHT_TO_LEFT direction", "DOWNHILL pace");
        assertThat(byTrait(shots).inWords(Units.METRIC)).anySatisfy(text -> assertThat(text).matches(
                "On right-to-left putts your direction scatters by 2\\.\\d degrees, elsewhere by 1\\.\\d \\(\\d+ putts\\)\\."))
                .anySatisfy(text -> assertThat(text).matches(
                        "On downhill putts your length scatters by 1\\d in 100, elsewhere by \\d \\(\\d+ putts\\)\\."));
    }

    /** With nothing to find, at most one player in twenty is told of a kind with more scatter. */
    @Test
    void playersWithoutAnyAreToldOfNone() {
        int players = 200;
        int told = 0;
        for (int player = 0; player < players; player++) {
            Random random = new Random(3000 + player);
            List<Shot> shots = new ArrayList<>();
            for (int i = 0; i < 1200; i++) {
                shots.add(Golfer.club().putt(random, i / 60, i, 914.4 * (1 + random.nextInt(7)))
                        .tagged(Break.values()[random.nextInt(3)], Lie.values()[random.nextInt(3)]));
            }
            told += byTrait(shots).wider().isEmpty() ? 0 : 1;
        }
        System.out.printf("1200 putts, seeds 3000 on: %d of %d players with the same scatter everywhere are told of more%n",
                told, players);
        assertThat((double) told / players).isLessThanOrEqualTo(0.05 + 2 * Math.sqrt(0.05 * 0.95 / players));
    }

    private static StrokeByTrait byTrait(List<Shot> shots) {
        Sessions sessions = Sessions.of(shots);
        return StrokeByTrait.of(sessions, Tallies.of(sessions).stroke());
    }
}

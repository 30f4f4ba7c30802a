package org.cupbeam.studio.insight;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Pattern;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.studio.insight.advice.Advice;
import org.cupbeam.studio.insight.advice.Advice.Rule;
import org.cupbeam.studio.insight.make.StrokeFit;
import org.cupbeam.studio.insight.shot.Break;
import org.cupbeam.studio.insight.shot.Golfer;
import org.cupbeam.studio.insight.shot.Lie;
import org.cupbeam.studio.insight.shot.Shot;
import org.cupbeam.studio.insight.words.Units;
import org.junit.jupiter.api.Test;

class InsightTest {
    private static final Question QUESTION =
            Question.about(DrillFile.preset("ladder"), 914.4, Units.METRIC, ZoneOffset.UTC);
    /** Nothing of body or health, and no promise. */
    private static final Pattern NEVER = Pattern.compile(
            "(?i)\\b(pain|injur|health|medic|doctor|body|muscle|back ache|guarante|always|certain to|will improve|never)\\w*");

    @Test
    void nobodyIsToldAnythingOfNoPutts() {
        Insight insight = Insight.of(List.of(), QUESTION);
        assertThat(insight.turns().inWords()).isEqualTo("Too early to tell of a turn: about 500 more putts.");
        assertThat(insight.stroke()).isEmpty();
        assertThat(insight.comparisons()).isEmpty();
        assertThat(insight.weaknesses().findings()).isEmpty();
        assertThat(insight.forecast()).isPresent();
        assertThat(insight.advice()).extracting(Advice::rule).containsOnly(Rule.FAIR_TEST);
    }

    /** Whatever the putts, insight answers, and its chances are chances. */
    @Property(tries = 60, edgeCases = EdgeCasesMode.NONE)
    void anyPuttsAreAnswered(@ForAll long seed, @ForAll @IntRange(max = 400) int putts) {
        Random random = new Random(seed);
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < putts; i++) {
            shots.add(anything(random, i));
        }
        Insight insight = Insight.of(shots, QUESTION);
        for (double mm = 200; mm < 30_000; mm *= 1.5) {
            assertThat(insight.skill().at(mm).value()).isBetween(0.0, 1.0);
            assertThat(insight.skill().at(mm).low()).isBetween(0.0, insight.skill().at(mm).value() + 1e-9);
        }
        assertThat(insight.forecast().orElseThrow().atLeast(0)).isBetween(0.999, 1.001);
        insight.advice().forEach(each -> assertThat(each.what() + each.because()).doesNotContain("NaN"));
    }

    /** Of any length or kind, sensible or not, measured or not. */
    private static Shot anything(Random random, int i) {
        Shot shot = Shot.of(i / (1 + random.nextInt(60)), i * 40_000L, Math.exp(5 + 5 * random.nextDouble()),
                random.nextInt(3) == 0).tagged(Break.values()[random.nextInt(4)], Lie.values()[random.nextInt(4)]);
        if (random.nextBoolean()) {
            shot = shot.onGreen(6 + 8 * random.nextDouble(), 0.2);
        }
        return switch (random.nextInt(5)) {
            case 0 -> shot;
            case 1 -> shot.holed() ? shot : shot.finishingBelow(-300 * random.nextDouble());
            case 2 -> shot.rolling(3000 * random.nextGaussian(), 2000 * random.nextDouble());
            case 3 -> shot.rolling(300 * random.nextGaussian(), Double.NaN);
            default -> shot.holed() ? shot : shot.finishing(1000 * random.nextGaussian()).offTheRim();
        };
    }

    @Test
    void aRigThatMeasuresNoPaceIsAnsweredFromMakesAlone() {
        List<Shot> shots = shots(new Golfer(1.4, 280, 0.09, 0.01), 3000, 1).stream().map(shot ->
                Shot.of(shot.session(), shot.atMs(), shot.distanceMm(), shot.holed()).tagged(shot.breaks(), shot.lie()))
                .toList();
        Insight insight = Insight.of(shots, QUESTION);
        assertThat(insight.stroke()).isEmpty();
        assertThat(insight.byTrait()).isEmpty();
        assertThat(insight.turns().charts()).hasSize(1);
        assertThat(insight.skill().at(1828.8).width()).isLessThan(0.08);
        assertThat(insight.comparisons()).hasSize(2).allSatisfy(each -> assertThat(each.putts()).isEqualTo(3000));
    }

    @Test
    void theStrokeStandsForAPlayerWhosePuttsWereMeasured() {
        Insight insight = Insight.of(shots(new Golfer(1.4, 280, 0.09, 0.01), 3000, 2), QUESTION);
        assertThat(insight.skill()).isInstanceOf(StrokeFit.class);
        assertThat(insight.from()).isZero();
        assertThat(insight.turns().turns()).isEmpty();
    }

    @Test
    void afterATurnThePlayerIsWhoTheyAreNow() {
        List<Shot> shots = new ArrayList<>(shots(new Golfer(1.8, 280, 0.09, 0.01), 3000, 3));
        shots(new Golfer(1.1, 280, 0.09, 0.01), 900, 4).forEach(shot -> shots.add(new Shot(shot.session() + 100,
                shot.atMs() + 4_000_000_000L, shot.distanceMm(), shot.holed(), shot.finishMm(), shot.finishBelowMm(),
                shot.paceMm(), shot.speedAtHoleMmPerS(), shot.rim(), shot.breaks(), shot.lie(), shot.stimpFt(),
                shot.stimpSdFt())));
        Insight insight = Insight.of(shots, QUESTION);
        assertThat(insight.turns().turns()).hasSize(1);
        assertThat(insight.from()).isBetween(48, 52);
        assertThat(insight.stroke().orElseThrow().direction().degrees().holds(1.1)).isTrue();
        assertThat(insight.advice().get(0).rule()).isIn(Rule.WEAKEST_FIRST, Rule.AIM, Rule.STROKE_PART, Rule.FAIR_TEST);
        assertThat(insight.advice()).extracting(Advice::rule).contains(Rule.KEEP);
    }

    @Test
    void adviceFollowsFromWhatIsPlanted() {
        assertThat(rules(new Golfer(1.3, -150, 0.08, 0.005), 5)).contains(Rule.AIM);
        assertThat(rules(new Golfer(0.35, 300, 0.20, 0.005), 6)).contains(Rule.STROKE_PART, Rule.LAG);
        assertThat(rules(new Golfer(2.0, 300, 0.06, 0.005), 6)).contains(Rule.STROKE_PART);
        assertThat(rules(new Golfer(1.3, 300, 0.08, 0.09), 7)).contains(Rule.CLEAN_STRIKE);
        assertThat(rules(new Golfer(1.3, 300, 0.08, 0.005), 8)).doesNotContain(Rule.AIM, Rule.LAG, Rule.CLEAN_STRIKE,
                Rule.LOOK_BACK, Rule.KEEP, Rule.WEAKEST_FIRST);
    }

    @Test
    void adviceKeepsToGolfAndPromisesNothing() {
        List<Golfer> golfers = List.of(Golfer.tour(), Golfer.club(), Golfer.beginner(), new Golfer(1.3, -150, 0.2, 0.09));
        for (Golfer golfer : golfers) {
            List<Advice> advice = Insight.of(shots(golfer, 1500, 9), QUESTION).advice();
            assertThat(advice).isNotEmpty().hasSizeLessThanOrEqualTo(6).allSatisfy(each -> {
                assertThat(each.what()).isNotBlank().endsWith(".");
                assertThat(each.because()).isNotBlank().containsPattern("\\d").endsWith(".");
                assertThat(each.what() + each.because() + each.rule().words()).doesNotContainPattern(NEVER);
            });
        }
    }

    private static List<Rule> rules(Golfer golfer, long seed) {
        return Insight.of(shots(golfer, 3000, seed), QUESTION).advice().stream().map(Advice::rule).toList();
    }

    private static List<Shot> shots(Golfer golfer, int putts, long seed) {
        Random random = new Random(seed);
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < putts; i++) {
            shots.add(golfer.putt(random, i / 60, i * 1_000_000L, 914.4 * (1 + i % 8))
                    .tagged(Break.values()[random.nextInt(3)], Lie.values()[random.nextInt(3)]));
        }
        return shots;
    }
}

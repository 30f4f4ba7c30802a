package org.cupbeam.studio.insight.plot;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.studio.insight.Insight;
import org.cupbeam.studio.insight.Question;
import org.cupbeam.studio.insight.shot.Golfer;
import org.cupbeam.studio.insight.shot.Sessions;
import org.cupbeam.studio.insight.shot.Shot;
import org.cupbeam.studio.insight.words.Units;
import org.junit.jupiter.api.Test;

/** What is drawn are the putts: none added, none lost, and chance held for chance. */
class PlotTest {
    private static final Question QUESTION =
            Question.about(DrillFile.preset("ladder"), 914.4, Units.METRIC, ZoneOffset.UTC);

    @Test
    void everyPuttStandsOnTheTimelineOnceHoweverManySessionsAPointHas() {
        for (int sessions : new int[] {0, 1, 119, 120, 121, 500}) {
            Timeline timeline = timeline(sessions, Golfer.club(), 1);
            assertThat(timeline.points().stream().mapToInt(Timeline.Point::putts).sum()).isEqualTo(sessions * 30);
            assertThat(timeline.points()).hasSizeLessThanOrEqualTo(Timeline.POINTS_MAX);
        }
    }

    @Test
    void ofAPlayerWhoDoesNotChangeTheIntervalsOfNineteenInTwentySessionsHoldNone() {
        List<Timeline.Point> points = new ArrayList<>();
        for (int seed = 0; seed < 20; seed++) {
            points.addAll(timeline(100, Golfer.club(), seed).points());
        }
        double held = points.stream().filter(point -> point.perHundred().holds(0)).count() / (double) points.size();
        System.out.printf("timeline: %.3f of %d sessions' intervals hold no difference; stated 0.95%n", held, points.size());
        assertThat(held).isBetween(0.935, 0.965);
    }

    @Test
    void theLatestMissesAreShownAndThoseThatNobodySawAreCounted() {
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < 1_000; i++) {
            Shot miss = Shot.of(0, i, 2_000, false);
            shots.add(i % 4 == 0 ? Shot.of(0, i, 2_000, true) : i % 4 == 1 ? miss.finishingBelow(-200) : miss.finishing(i));
        }
        Stops stops = Stops.of(Sessions.of(shots), 914.4);
        assertThat(stops.misses()).hasSize(Stops.MOST).extracting(Stops.Miss::finishMm).isSorted().endsWith(999.0);
        assertThat(stops.unseen()).isBetween(149, 150);
        assertThat(Stops.of(Sessions.of(List.of()), 914.4).misses()).isEmpty();
    }

    private static Timeline timeline(int sessions, Golfer golfer, long seed) {
        Random random = new Random(seed);
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < sessions * 30; i++) {
            shots.add(golfer.putt(random, i / 30, i * 60_000L, 914.4 * (1 + random.nextInt(7))));
        }
        Insight insight = Insight.of(shots, QUESTION);
        return Timeline.of(insight.sessions(), insight.skill().curve(), insight.weaknesses(), insight.turns());
    }
}

package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import java.util.OptionalDouble;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.Penalty;
import org.cupbeam.drill.Stations;
import org.cupbeam.drill.Supply;
import org.cupbeam.drill.Turns;
import org.cupbeam.studio.web.Rehearsal.Line;
import org.junit.jupiter.api.Test;

class RehearsalTest {
    private static final double RIG_LIMIT_MM = 914.4;

    @Test
    void tellsWhatEachPuttLeadsTo() {
        Rehearsal played = play(drill(3, Supply.EVERY_STATION, Penalty.BACK_ONE, Turns.STATION), "mhhpmhmmm");

        assertThat(played.lines()).extracting(Line::station, Line::ball, Line::ballsLeft, Line::cleared, Line::toStation,
                Line::endedBy).containsExactly(
                tuple(1, 1, 2, false, 1, null),
                tuple(1, 2, 1, true, 2, null),
                tuple(2, 1, 2, true, 3, null),
                tuple(3, 1, 2, false, 2, null),
                tuple(2, 1, 2, false, 2, null),
                tuple(2, 2, 1, true, 3, null),
                tuple(3, 1, 2, false, 3, null),
                tuple(3, 2, 1, false, 3, null),
                tuple(3, 3, 0, false, 3, "out-of-balls"));
        assertThat(played.over()).isTrue();
        assertThat(played.sides().get(0).stationsCleared()).isEqualTo(2);
    }

    @Test
    void tellsWhenAnOvershootCostsAnotherBall() {
        Rehearsal played = play(drill(3, Supply.EVERY_STATION, Penalty.LOSE_BALL, Turns.STATION), "pm");

        assertThat(played.lines()).extracting(Line::lostBall, Line::ballsLeft, Line::endedBy)
                .containsExactly(tuple(true, 1, null), tuple(false, 0, "out-of-balls"));
    }

    @Test
    void stopsAtTheEndOfTheFirstRun() {
        Rehearsal played = play(drill(1, Supply.WHOLE_RUN, Penalty.NONE, Turns.BALL), "hhhhhh");

        assertThat(played.lines()).hasSize(3);
        assertThat(played.lines().get(2).cleared()).isTrue();
        assertThat(played.lines().get(2).endedBy()).isEqualTo("cleared-all");
        assertThat(played.winner()).isNull();
    }

    @Test
    void takesTurnsInADuelAndNamesTheWinner() {
        Rehearsal played = Rehearsal.of(drill(1, Supply.WHOLE_RUN, Penalty.NONE, Turns.BALL), List.of("Ada", "Bo"), "hmh",
                RIG_LIMIT_MM);

        assertThat(played.lines()).extracting(Line::player).containsExactly("Ada", "Bo");
        assertThat(played.over()).as("Ada is ahead, and Bo is out").isTrue();
        assertThat(played.winner()).isEqualTo("Ada");
    }

    @Test
    void takesTheRigsLimitWhereTheDrillHasNone() {
        assertThat(play(drill(2, Supply.EVERY_STATION, Penalty.END_RUN, Turns.BALL), "p").limitMm()).isEqualTo(RIG_LIMIT_MM);
    }

    @Test
    void goesOnWhereThePuttsRunOut() {
        Rehearsal played = play(drill(3, Supply.EVERY_STATION, Penalty.NONE, Turns.STATION), "s");

        assertThat(played.over()).isFalse();
        assertThat(played.sides().get(0).meanMissMm()).isEqualTo(300.0);
    }

    private static Rehearsal play(Drill drill, String putts) {
        return Rehearsal.of(drill, List.of("Ada"), putts, RIG_LIMIT_MM);
    }

    private static Drill drill(int balls, Supply supply, Penalty penalty, Turns turns) {
        return new Drill("D", new Stations.Ladder(1000, 500, 3), balls, supply, 1, OptionalDouble.empty(), penalty, turns);
    }
}

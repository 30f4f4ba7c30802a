package org.cupbeam.lane;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.cupbeam.event.Command;
import org.cupbeam.event.GreenNow;
import org.cupbeam.event.Score;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ComingBackTest {
    @TempDir
    Path folder;
    private SteppedLane lane;

    @BeforeEach
    void open() {
        lane = new SteppedLane(folder.resolve("lane.db")).open();
    }

    @AfterEach
    void close() {
        lane.close();
    }

    /** A score but for the moment it was made in. */
    static Score timeless(Score score) {
        return new Score(score.studio(), score.lane(), score.sequence(), score.state(), score.drill(), score.limitMm(),
                score.tags(), score.duel(), score.winner(), score.turn(), score.players(), score.last(),
                new GreenNow(0, 0, 0), score.beams(), Instant.EPOCH);
    }

    @Test
    void aLaneThatLostItsPowerIsInTheSameRunAtTheSameStationWithTheSameBalls() {
        lane.start(SteppedLane.ladder(5, 4), "Ana", "Bo").hole().miss().hole().miss().takeBack().miss().sync();
        Score before = timeless(lane.outlet.score());
        UpNext next = lane.agent.upNext();

        lane.crash();

        assertThat(timeless(lane.outlet.score())).isEqualTo(before);
        assertThat(lane.agent.upNext()).isEqualTo(next);
        long last = lane.journal.last();
        lane.hole().sync();
        assertThat(lane.outlet.score().sequence()).isEqualTo(last + 1);
        assertThat(lane.outlet.score().players()).extracting(Score.Player::run)
                .isEqualTo(before.players().stream().map(Score.Player::run).toList());
    }

    @Test
    void whatHadNotReachedTheDiskWasNeverToldAndHasNotHappened() {
        lane.start(SteppedLane.ladder(5, 4), "Ana").hole().sync();
        Score told = timeless(lane.outlet.score());
        lane.hole();

        assertThat(timeless(lane.outlet.score())).isEqualTo(told);
        assertThat(timeless(lane.crash().outlet.score())).isEqualTo(told);
    }

    @Test
    void attemptsCanBeTakenBackAfterwardsAsIfNothingHadHappened() {
        lane.start(SteppedLane.ladder(1, 1), "Ana").hole().hole().sync();
        lane.crash().takeBack().takeBack().sync();

        assertThat(lane.outlet.score().state()).isEqualTo(Score.State.PLAYING);
        assertThat(lane.outlet.score().last()).isNull();
        assertThat(lane.outlet.score().players().get(0).attempts()).isZero();
    }

    @Test
    void theDrillAskedForAtTheStartGoesOnWhereItIsBeingPlayedAndBeginsWhereAnotherIs() {
        lane.start = new Command.Start(SteppedLane.ladder(3, 2), List.of("Ana"), SteppedLane.TAGS);
        lane.crash().hole().sync();
        assertThat(lane.outlet.score().players().get(0).station()).isEqualTo(2);
        assertThat(lane.crash().outlet.score().players().get(0).station()).isEqualTo(2);

        lane.start = new Command.Start(SteppedLane.ladder(3, 2), List.of("Bo"), SteppedLane.TAGS);
        lane.crash().sync();
        assertThat(lane.outlet.score().players().get(0).player()).isEqualTo("Bo");
        assertThat(lane.outlet.score().players().get(0).station()).isEqualTo(1);
    }

    @Test
    void theLastAttemptOutsideAnyPlayIsStillThere() {
        lane.hole().miss().sync();
        Score before = timeless(lane.outlet.score());

        assertThat(timeless(lane.crash().outlet.score())).isEqualTo(before);
        lane.takeBack().sync();
        assertThat(lane.outlet.score().last()).isNull();
        assertThat(lane.crash().outlet.score().sequence()).isEqualTo(3);
    }

    @Test
    void aPlayThatGoesOnForEverIsFoldedFromItsRecentRoundsAlone() throws Exception {
        lane.start(SteppedLane.ladder(1, 1), "Ana");
        for (int i = 0; i < Game.TOLD_MAX + 10; i++) {
            lane.ask(new Command.Miss(-300)).sync();
        }
        assertThat(lane.journal.inputs()).hasSizeLessThan(20);
        Score before = timeless(lane.outlet.score());
        assertThat(timeless(lane.crash().outlet.score())).isEqualTo(before);
        assertThat(before.players().get(0).attempts()).isEqualTo(1);
    }
}

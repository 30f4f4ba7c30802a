package org.cupbeam.studio.coach;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.studio.Pages;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.insight.Question;
import org.cupbeam.studio.insight.make.Peers;
import org.cupbeam.studio.insight.shot.Break;
import org.cupbeam.studio.insight.shot.Lie;
import org.cupbeam.studio.insight.shot.Shot;
import org.cupbeam.studio.insight.words.Units;
import org.cupbeam.studio.store.RecordBook;
import org.cupbeam.studio.store.Who;
import org.cupbeam.studio.store.sums.Sum;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CoachTest {
    private static final Question QUESTION =
            Question.about(DrillFile.preset("ladder"), 914.4, Units.METRIC, ZoneOffset.UTC);

    @TempDir
    Path folder;
    private final ScriptedLane lane = new ScriptedLane("one", "j1");
    private Pages pages;
    private Coach coach;

    @BeforeEach
    void open() throws Exception {
        pages = new Pages(folder);
        coach = new Coach(pages.store, Pages.NOW);
        pages.keep(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1),
                lane.passes(60).misses("r1", null, "Ada", 2, 417));
    }

    @AfterEach
    void close() {
        coach.close();
        pages.close();
    }

    @Test
    void whatHasNotChangedIsNotWorkedOutAnew() {
        Portrait first = coach.portrait(1, QUESTION);
        pages.keep(lane.starts("r2", null, "Bo", 1), lane.holes("r2", null, "Bo", 1));

        assertThat(coach.portrait(1, QUESTION)).isSameAs(first);
        assertThat(coach.portrait(2, QUESTION)).isNotSameAs(first);
    }

    @Test
    void aPuttAndACorrectionAreSeenAtOnce() {
        assertThat(coach.portrait(1, QUESTION).putts()).isEqualTo(2);
        pages.keep(lane.holes("r1", null, "Ada", 2));
        assertThat(coach.portrait(1, QUESTION).putts()).isEqualTo(3);
        pages.keep(lane.takesBack(lane.sequence()));
        assertThat(coach.portrait(1, QUESTION).putts()).isEqualTo(2);
        new RecordBook(pages.store).voids(1, new Who("Kim", null, 0));
        assertThat(coach.portrait(1, QUESTION).putts()).isEqualTo(1);
    }

    @Test
    void anotherQuestionIsAnotherAnswer() {
        Question inFeet = Question.about(DrillFile.preset("ladder"), 914.4, Units.FEET, ZoneOffset.UTC);
        Portrait metric = coach.portrait(1, QUESTION);
        Portrait feet = coach.portrait(1, inFeet);

        assertThat(feet).isNotSameAs(metric);
        assertThat(coach.portrait(1, QUESTION)).isSameAs(metric);
    }

    @Test
    void whoHasNoPuttIsToldNothing() {
        Portrait nobody = coach.portrait(99, QUESTION);
        assertThat(nobody.putts()).isZero();
        assertThat(nobody.timeline().points()).isEmpty();
        assertThat(nobody.past()).isEmpty();
    }

    @Test
    void afterTwoHoursASessionEnds() {
        pages.keep(lane.passes(7_199).holes("r1", null, "Ada", 2), lane.passes(7_201).holes("r1", null, "Ada", 3));
        List<Shot> shots = pages.store.read(h -> ShotReader.all(h, 1, null));

        assertThat(shots).extracting(Shot::session).containsExactly(0L, 0L, 0L, 1L);
        assertThat(shots.get(0).breaks()).isEqualTo(Break.LEFT_TO_RIGHT);
        assertThat(shots.get(0).lie()).isEqualTo(Lie.UPHILL);
    }

    @Test
    void nobodyIsWorkedOutAnewForAnotherPlayersCorrection() {
        pages.keep(lane.starts("r2", null, "Bo", 1), lane.holes("r2", null, "Bo", 1), lane.holes("r2", null, "Bo", 2));
        Portrait ada = coach.portrait(1, QUESTION);
        Portrait bo = coach.portrait(2, QUESTION);
        pages.keep(lane.takesBack(lane.sequence()));

        assertThat(coach.portrait(1, QUESTION)).isSameAs(ada);
        assertThat(coach.portrait(2, QUESTION)).isNotSameAs(bo);
    }

    @Test
    void afterItIsClosedWhoeverStillAsksIsToldWhatIsKnown() {
        AtomicLong nowMs = new AtomicLong(Pages.NOW.millis());
        Coach closing = new Coach(pages.store, () -> Instant.ofEpochMilli(nowMs.get()));
        assertThat(closing.peers(1828.8)).isEmpty();
        nowMs.addAndGet(3_600_000); // by then they would be counted anew
        closing.close();

        assertThat(closing.peers(1828.8)).isEmpty();
        closing.warmUp(player -> QUESTION);
    }

    @Test
    void beforeAnybodyAsksTheBusiestPlayersAreAtHand() throws Exception {
        pages.keep(lane.starts("r2", null, "Bo", 1), lane.holes("r2", null, "Bo", 1), lane.holes("r2", null, "Bo", 2),
                lane.holes("r2", null, "Bo", 3));
        List<Integer> asked = new CopyOnWriteArrayList<>();
        CountDownLatch begun = new CountDownLatch(3);
        coach.warmUp(player -> {
            asked.add(player);
            begun.countDown();
            return QUESTION;
        });
        assertThat(begun.await(60, TimeUnit.SECONDS)).isTrue();
        assertThat(List.copyOf(asked).subList(0, 2)).as("the one with three putts, then the one with two").containsExactly(2, 1);
    }

    /** Of seven players a band would point at somebody; of eight it is told. */
    @Test
    void bandsAreToldOnlyOfEnoughPlayers() {
        everybodyPutts(Peers.PLAYERS_MIN - 1);
        assertThat(new Coach(pages.store, Pages.NOW).peers(1828.8)).isEmpty();
        everybodyPutts(Peers.PLAYERS_MIN);
        assertThat(new Coach(pages.store, Pages.NOW).peers(1828.8).orElseThrow().players()).isEqualTo(8);
    }

    /** Copies of one putt, 200 for each of so many players. */
    private void everybodyPutts(int players) {
        pages.store.writing(h -> {
            h.execute("DELETE FROM attempt WHERE id > 2");
            for (int i = 0; i < players * 200; i++) {
                h.execute("INSERT OR IGNORE INTO player (id, name, name_key, created_ms) VALUES (?, ?, ?, 0)", 100 + i / 200,
                        "p" + i / 200, "p" + i / 200);
                h.execute("INSERT INTO attempt (id, journal_id, sequence, lane_id, at_ms, player_id, station_mm, holed, "
                        + "overshoot, rim, entered) SELECT ?, journal_id, ?, lane_id, at_ms, ?, 1828.8, ?, 0, 0, 0 "
                        + "FROM attempt WHERE id = 1", 1_000 + i, 1_000 + i, 100 + i / 200, i % 3 == 0 ? 0 : 1);
            }
            Sum.ALL.forEach(sum -> sum.make(h));
        });
    }
}

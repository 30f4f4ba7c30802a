package org.cupbeam.studio.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.cupbeam.event.Data;
import org.cupbeam.event.Event;
import org.cupbeam.event.Stamp;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.ingest.Batch;
import org.cupbeam.studio.ingest.EventLog;
import org.junit.jupiter.api.Test;

/** What the store does with events, whichever database it lives in. */
abstract class KeeperBehaviour extends StoreFixture {
    private final ScriptedLane lane = new ScriptedLane("one", "j1");

    @Test
    void keepsAnAttemptWithAllItsNumbers() {
        commit(lane.starts("r1", null, "Ada", 1), lane.misses("r1", null, "Ada", 2, 1310.5));

        assertThat(one("SELECT a.*, p.name AS player, d.name AS drill FROM attempt a JOIN player p ON p.id = a.player_id "
                + "JOIN drill d ON d.id = a.drill_id"))
                .containsEntry("player", "Ada").containsEntry("drill", "Ladder").containsEntry("station", 2)
                .containsEntry("station_mm", 1828.8).containsEntry("holed", 0).containsEntry("finish_mm", 1310.5)
                .containsEntry("finish_sd_mm", 8.5).containsEntry("finish_low_mm", 1293.5)
                .containsEntry("finish_high_mm", 1327.5).containsEntry("overshoot", 1)
                .containsEntry("speed_at_hole_mm_s", 1250.0).containsEntry("pace_mm", 1310.5)
                .containsEntry("rim", 0).containsEntry("entered", 0).containsEntry("breaks", "left-to-right")
                .containsEntry("slope", "uphill").containsEntry("stimp_ft", 9.4).containsEntry("balls_left", 5)
                .containsEntry("counts", 1);
    }

    @Test
    void keepsWhatIsNotKnownAsNull() {
        commit(lane.puttsOutsideAnyRun());

        assertThat(one("SELECT * FROM attempt")).containsEntry("run_id", null).containsEntry("finish_mm", null)
                .containsEntry("finish_low_mm", null).containsEntry("finish_high_mm", -120.0)
                .containsEntry("entered", 1).containsEntry("breaks", null);
    }

    @Test
    void keepsEachEventAsItCameAndOnce() {
        Event event = lane.starts("r1", null, "Ada", 1);
        commit(event);
        commit(event);

        assertThat(all("SELECT envelope FROM event")).extracting(row -> row.get("envelope"))
                .containsExactly(new String(ScriptedLane.json(event), StandardCharsets.UTF_8));
        assertThat(count("run")).isEqualTo(1);
    }

    @Test
    void passesOverWhatIsKeptWithinABatchThatHoldsMore() {
        Event first = lane.starts("r1", null, "Ada", 1);
        Event second = lane.holes("r1", null, "Ada", 1);
        commit(first, second);
        commit(first, second, lane.holes("r1", null, "Ada", 2));

        assertThat(count("event")).isEqualTo(3);
        assertThat(count("attempt")).isEqualTo(2);
        assertThat(one("SELECT putts, holed FROM lane_quarter")).containsEntry("putts", 2).containsEntry("holed", 2);
    }

    @Test
    void remembersHowFarEachJournalIsKeptAndWhichLaneWasHeardLast() {
        ScriptedLane other = new ScriptedLane("two", "j2");
        keeper.commit(batch(List.of(arrival(lane.starts("a", null, "Ada", 1), NOW))));
        keeper.commit(batch(List.of(arrival(other.starts("b", null, "Bo", 1), NOW.plusSeconds(5)),
                arrival(other.holes("b", null, "Bo", 1), NOW.plusSeconds(5)))));

        assertThat(new Keeper(store).kept()).containsExactly(new EventLog.Kept(lane.source, 1),
                new EventLog.Kept(other.source, 2));
    }

    @Test
    void keepsNothingOfABatchThatFailsAndGoesOnAfterIt() {
        Arrival good = arrival(lane.starts("r1", null, "Ada", 1), NOW);
        Arrival impossible = new Arrival(good.source(), 2, NOW, null, "x", null, NOW);

        assertThatThrownBy(() -> keeper.commit(batch(List.of(good, impossible)))).isInstanceOf(RuntimeException.class);
        assertThat(count("event")).isZero();
        assertThat(count("player")).isZero();

        keeper.commit(batch(List.of(good)));
        assertThat(count("event")).isEqualTo(1);
        assertThat(count("player")).isEqualTo(1);
    }

    @Test
    void tellsPlayersByNameWhateverItsCaseAndSpacing() {
        commit(lane.starts("r1", null, "Ada L", 1), lane.starts("r2", null, " ada  l", 1));

        assertThat(all("SELECT name FROM player")).containsExactly(Map.of("name", "Ada L"));
    }

    @Test
    void keepsHostileNamesAsTheyAre() {
        String hostile = "'); DROP TABLE player; --<script>";
        commit(lane.starts("r1", null, hostile, 1));

        assertThat(one("SELECT name FROM player")).containsEntry("name", hostile);
    }

    @Test
    void keepsARunWhoseBeginningNeverCame() {
        commit(lane.holes("r7", "d1", "Bo", 3));

        assertThat(one("SELECT r.name, r.drill_id, p.name AS player, d.name AS duel FROM run r "
                + "JOIN player p ON p.id = r.player_id JOIN duel d ON d.id = r.duel_id"))
                .containsEntry("name", "r7").containsEntry("drill_id", null).containsEntry("player", "Bo")
                .containsEntry("duel", "d1");
    }

    @Test
    void keepsHowARunAndADuelEnded() {
        commit(lane.starts("r1", "d1", "Ada", 1), lane.starts("r2", "d1", "Bo", 2),
                lane.ends("r1", "d1", "Ada", 4, 11, 4, 333.3), lane.ends("r2", "d1", "Bo", 3, 9, 3, Double.NaN),
                lane.endsDuel("d1", "Ada"));

        assertThat(all("SELECT stations_cleared, attempts, holed, mean_miss_mm, ended_by, ended_sequence FROM run "
                + "ORDER BY id")).extracting(Map::values).extracting(ArrayList::new).containsExactly(
                new ArrayList<>(Arrays.<Object>asList(4, 11, 4, 333.3, "out-of-balls", 3)),
                new ArrayList<>(Arrays.<Object>asList(3, 9, 3, null, "out-of-balls", 4)));
        assertThat(one("SELECT p.name FROM duel d JOIN player p ON p.id = d.winner_id")).containsEntry("name", "Ada");
    }

    @Test
    void marksAnAttemptTakenBackAndOpensItsRunAgain() {
        commit(lane.starts("r1", "d1", "Ada", 1), lane.holes("r1", "d1", "Ada", 1),
                lane.misses("r1", "d1", "Ada", 2, 400), lane.ends("r1", "d1", "Ada", 1, 2, 1, 400),
                lane.endsDuel("d1", null), lane.takesBack(3));

        assertThat(all("SELECT counts FROM attempt ORDER BY sequence")).extracting(row -> row.get("counts"))
                .containsExactly(1, 0);
        assertThat(one("SELECT * FROM run")).containsEntry("ended_ms", null).containsEntry("attempts", null);
        assertThat(one("SELECT * FROM duel")).containsEntry("ended_ms", null);
        assertThat(one("SELECT * FROM correction")).containsEntry("of_sequence", 3).containsEntry("by_whom", "pedal")
                .containsEntry("what", "taken-back");
        assertThat(one("SELECT putts FROM lane_quarter")).containsEntry("putts", 1);
        assertThat(count("event")).isEqualTo(6);
    }

    @Test
    void marksAVoidedAttemptAndTakesItOutOfItsRunsScore() {
        commit(lane.starts("r1", null, "Ada", 1), lane.misses("r1", null, "Ada", 1, 400),
                lane.ends("r1", null, "Ada", 0, 1, 0, 400), lane.voids(2, "coach", "ball was kicked"));

        assertThat(one("SELECT counts FROM attempt")).containsEntry("counts", 0);
        assertThat(one("SELECT attempts FROM run")).containsEntry("attempts", 0);
        assertThat(one("SELECT was, by_whom FROM amendment")).containsEntry("by_whom", "coach")
                .containsEntry("was", "cleared 0, attempts 1, holed 0, mean miss 400 mm, out-of-balls");
        assertThat(one("SELECT reason FROM correction")).containsEntry("reason", "ball was kicked");
        assertThat(count("lane_quarter")).isZero();
    }

    @Test
    void setsEarlierTimesOfTheSameStartRightOnceTheClockIsKnown() {
        Instant epoch = Instant.parse("1970-01-01T00:00:30Z");
        Instant right = Instant.parse("2026-11-25T20:00:00Z");
        commit(lane.starts("r0", null, "Ada", 1));
        lane.boots("boot-2", epoch);
        commit(lane.starts("r1", null, "Ada", 1), lane.passes(40).holes("r1", null, "Ada", 1),
                lane.ends("r1", null, "Ada", 1, 1, 1, Double.NaN));
        assertThat(one("SELECT at_ms FROM attempt")).containsEntry("at_ms", 70_000);

        commit(lane.passes(60).setsClock(right));

        assertThat(one("SELECT at_ms FROM attempt")).containsEntry("at_ms", right.minusSeconds(60).toEpochMilli());
        assertThat(one("SELECT started_ms, ended_ms FROM run WHERE name = 'r1'"))
                .containsEntry("started_ms", right.minusSeconds(100).toEpochMilli())
                .containsEntry("ended_ms", right.minusSeconds(60).toEpochMilli());
        assertThat(all("SELECT synchronised FROM event ORDER BY sequence")).extracting(row -> row.get("synchronised"))
                .containsExactly(1, 2, 2, 2, 1);
        assertThat(one("SELECT started_ms FROM run WHERE name = 'r0'"))
                .containsEntry("started_ms", Instant.parse("2026-11-25T18:00:00Z").toEpochMilli());
        assertThat(all("SELECT quarter FROM lane_quarter")).extracting(row -> row.get("quarter"))
                .containsExactly((int) (right.minusSeconds(60).toEpochMilli() / 900_000));
    }

    @Test
    void countsAPuttInOneQuarterHourOnlyThoughItsClockWasSetBackIn1970() {
        Instant right = Instant.parse("2026-11-25T20:00:00Z");
        lane.boots("boot-2", Instant.EPOCH.minusSeconds(3_600));
        commit(lane.passes(40).puttsOutsideAnyRun());

        commit(lane.passes(60).setsClock(right));

        assertThat(all("SELECT quarter, putts FROM lane_quarter")).extracting(row -> row.get("quarter"),
                row -> row.get("putts")).containsExactly(tuple(
                        (int) (right.minusSeconds(60).toEpochMilli() / 900_000), 1));
    }

    @Test
    void setsLaterTimesOfAStartRightWhoseClockIsKnownThoughTheEventsDoNotKnow() {
        Instant right = Instant.parse("2026-11-25T20:00:00Z");
        lane.boots("boot-2", Instant.EPOCH);
        commit(lane.setsClock(right));
        Event late = lane.passes(10).puttsOutsideAnyRun();
        Event unaware = new Event(late.source(), late.sequence(), Instant.EPOCH, withUnknownClock(late));
        commit(unaware);

        assertThat(one("SELECT at_ms FROM attempt")).containsEntry("at_ms", right.plusSeconds(10).toEpochMilli());
    }

    @Test
    void keepsAnEventThatItDoesNotUnderstand() {
        Event event = lane.starts("r1", null, "Ada", 1);
        keeper.commit(batch(List.of(new Arrival(event.source(), 1, NOW, null, "data: is odd", "{}".getBytes(
                StandardCharsets.UTF_8), NOW))));

        assertThat(one("SELECT * FROM event")).containsEntry("problem", "data: is odd").containsEntry("envelope", "{}")
                .containsEntry("type", null);
        assertThat(keeper.kept()).extracting(EventLog.Kept::upTo).containsExactly(1L);
    }

    @Test
    void notesWhatNeverCame() {
        Event event = lane.starts("r1", null, "Ada", 1);
        Arrival fifth = new Arrival(event.source(), 5, NOW, event, null, ScriptedLane.json(event), NOW);
        keeper.commit(new Batch(List.of(fifth), List.of(new Batch.Missing(event.source(), 1, 4, NOW)), List.of()));

        assertThat(one("SELECT from_sequence, to_sequence FROM missing")).containsEntry("from_sequence", 1)
                .containsEntry("to_sequence", 4);
        assertThat(keeper.kept()).extracting(EventLog.Kept::upTo).containsExactly(5L);
    }

    @Test
    void keepsADeadLetterOnceAndCountsHowOftenItCame() {
        Batch.DeadLetter letter = new Batch.DeadLetter("cupbeam/home/one/event", "payload: is not JSON", "\0oops"
                .getBytes(StandardCharsets.UTF_8), NOW);
        keeper.commit(new Batch(List.of(), List.of(), List.of(letter, letter)));
        keeper.commit(new Batch(List.of(), List.of(), List.of(letter)));

        assertThat(all("SELECT topic, reason, times FROM dead_letter"))
                .extracting(r -> r.get("topic"), r -> r.get("reason"), r -> r.get("times"))
                .containsExactly(tuple("cupbeam/home/one/event", "payload: is not JSON", 3));
    }

    @Test
    void keepsTheNewestThousandDeadLetters() {
        for (int i = 0; i < 1_010; i += 101) {
            List<Batch.DeadLetter> letters = new ArrayList<>();
            for (int j = i; j < i + 101; j++) {
                letters.add(new Batch.DeadLetter("t", "reason " + j, new byte[0], NOW));
            }
            keeper.commit(new Batch(List.of(), List.of(), letters));
        }
        assertThat(count("dead_letter")).isEqualTo(1_000);
        assertThat(one("SELECT min(id) AS first FROM dead_letter")).containsEntry("first", 11);
    }

    @Test
    void readsOnConnectionsThatCannotWrite() {
        assertThatThrownBy(() -> store.read(h -> h.execute("DELETE FROM event"))).isInstanceOf(RuntimeException.class);
    }

    @Test
    void opensAStoreOfEveryEarlierSchemaWithWhatIsInIt() {
        for (String version : List.of("1", "2", "3", "4", "5", "6", "7")) {
            Database old = database();
            Migrations.run(old, version);
            try (Store opened = Store.open(old)) {
                Keeper its = new Keeper(opened);
                ScriptedLane another = new ScriptedLane("one", "j" + version);
                its.commit(batch(List.of(arrival(another.starts("r", null, "Ada", 1), NOW),
                        arrival(another.holes("r", null, "Ada", 1), NOW))));
                assertThat(its.kept()).hasSize(1);
            }
            try (Store again = Store.open(old)) {
                assertThat(new Keeper(again).kept()).extracting(EventLog.Kept::upTo).containsExactly(2L);
            }
        }
    }

    private static Data withUnknownClock(Event event) {
        Data.Attempt a = (Data.Attempt) event.data();
        return new Data.Attempt(new Stamp(a.stamp().boot(), a.stamp().monotonicNs(),
                Stamp.Clock.UNSYNCHRONISED), a.putt(), a.play(), a.tags(), a.green());
    }
}

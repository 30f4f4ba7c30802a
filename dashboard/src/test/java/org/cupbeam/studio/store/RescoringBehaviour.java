package org.cupbeam.studio.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.cupbeam.event.Event;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.seed.Seed;
import org.cupbeam.studio.seed.Size;
import org.junit.jupiter.api.Test;

/** What becomes of a run's score when its putts are voided, whichever database it lives in. */
abstract class RescoringBehaviour extends StoreFixture {
    private static final Who INES = new Who("Ines", "ball was kicked", 1_800_000_000_000L);
    private static final String SCORE = "SELECT stations_cleared, attempts, holed, round(CAST(mean_miss_mm AS NUMERIC), 1) "
            + "AS mean_mm, ended_by FROM run WHERE name = 'r1'";
    private final ScriptedLane lane = new ScriptedLane("one", "j1");

    @Test
    void aVoidedMissIsTakenOutOfTheCountAndTheMean() {
        commit(lane.starts("r1", null, "Ada", 1), lane.misses("r1", null, "Ada", 1, 100), lane.misses("r1", null, "Ada", 1, 300),
                lane.holes("r1", null, "Ada", 1), lane.misses("r1", null, "Ada", 2, 200),
                lane.ends("r1", null, "Ada", 1, 4, 1, 200));
        String before = one(SCORE).toString();

        new RecordBook(store).voids(2, INES);
        assertScore(1, 3, 1, "150.0");
        assertThat(all("SELECT was, became, by_whom, reason, at_ms FROM amendment WHERE what = 'rescored'")).containsExactly(
                Map.of("was", "cleared 1, attempts 4, holed 1, mean miss 200 mm, out-of-balls", "became",
                        "cleared 1, attempts 3, holed 1, mean miss 150 mm, out-of-balls", "by_whom", "Ines", "reason",
                        "ball was kicked", "at_ms", INES.atMs()));

        new RecordBook(store).restores(2, INES);
        assertThat(one(SCORE)).hasToString(before);
        assertThat(count("amendment")).isEqualTo(4);
        assertThat(one("SELECT envelope FROM event WHERE sequence = 6").get("envelope").toString())
                .as("what the lane made of it").contains("\"attempts\":4");
    }

    @Test
    void puttsFromWhereTheRunWouldNotHaveBeenClearNothing() {
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 2),
                lane.holes("r1", null, "Ada", 3), lane.misses("r1", null, "Ada", 4, 250),
                lane.ends("r1", null, "Ada", 3, 4, 3, 250));

        new RecordBook(store).voids(2, INES); // what cleared the second station
        assertScore(1, 3, 2, "250.0");
        assertThat(one("SELECT became FROM amendment WHERE what = 'rescored'").get("became").toString())
                .endsWith(", beyond 2");
    }

    @Test
    void aDuelGoesToWhoseScoreIsTheBestNow() {
        commit(lane.starts("r1", "d1", "Ada", 1), lane.starts("r2", "d1", "Bo", 2), lane.holes("r1", "d1", "Ada", 1),
                lane.misses("r2", "d1", "Bo", 1, 40), lane.ends("r2", "d1", "Bo", 0, 1, 0, 40),
                lane.ends("r1", "d1", "Ada", 1, 1, 1, Double.NaN), lane.endsDuel("d1", "Ada"));

        new RecordBook(store).voids(1, INES);
        assertThat(one("SELECT p.name FROM duel d JOIN player p ON p.id = d.winner_id").get("name")).as("Ada has no putt left: "
                + "neither has cleared any, and fewer attempts come first").isEqualTo("Ada");
        new RecordBook(store).restores(1, INES);
        commit(lane.starts("r3", "d2", "Ada", 1), lane.starts("r4", "d2", "Bo", 2), lane.misses("r3", "d2", "Ada", 1, 10),
                lane.holes("r3", "d2", "Ada", 1), lane.misses("r4", "d2", "Bo", 1, 40), lane.misses("r4", "d2", "Bo", 1, 40),
                lane.ends("r4", "d2", "Bo", 0, 2, 0, 40), lane.ends("r3", "d2", "Ada", 1, 2, 1, 10), lane.endsDuel("d2", "Ada"));
        int holed = (int) one("SELECT a.id FROM attempt a JOIN run r ON r.id = a.run_id WHERE r.name = 'r3' AND a.holed = 1").get("id");
        int missed = (int) all("SELECT a.id FROM attempt a JOIN run r ON r.id = a.run_id WHERE r.name = 'r4' ORDER BY a.id").get(0).get("id");

        new RecordBook(store).voids(missed, INES);
        new RecordBook(store).voids(holed, INES); // one putt each, none cleared: nearer wins
        assertThat(one("SELECT p.name FROM duel d JOIN player p ON p.id = d.winner_id WHERE d.name = 'd2'")).containsEntry("name", "Ada");
        new RecordBook(store).restores(missed, INES);
        assertThat(all("SELECT became FROM amendment WHERE what = 'rescored' ORDER BY id").toString()).contains(", won", ", lost");
    }

    @Test
    void aPuttVoidedWhileADuelGoesOnIsTakenOutOfItsDecisionToo() {
        commit(lane.starts("r1", "d1", "Ada", 1), lane.starts("r2", "d1", "Bo", 2), lane.holes("r1", "d1", "Ada", 1),
                lane.misses("r2", "d1", "Bo", 1, 40), lane.misses("r1", "d1", "Ada", 2, 90), lane.voids(3, "Ines", "kicked"),
                lane.ends("r2", "d1", "Bo", 0, 1, 0, 40), lane.ends("r1", "d1", "Ada", 1, 2, 1, 90), lane.endsDuel("d1", "Ada"));
        assertThat(one("SELECT p.name FROM duel d JOIN player p ON p.id = d.winner_id"))
                .as("one putt each, none cleared: nearer wins").containsEntry("name", "Bo");
    }

    @Test
    void aPuttVoidedWhileTheRunGoesOnIsTakenOutAtItsEnd() {
        commit(lane.starts("r1", null, "Ada", 1), lane.misses("r1", null, "Ada", 1, 100), lane.misses("r1", null, "Ada", 1, 300));
        commit(lane.voids(2, "Ines", null));
        assertThat(count("amendment")).isZero();

        commit(lane.holes("r1", null, "Ada", 1), lane.ends("r1", null, "Ada", 1, 3, 1, 200));
        assertScore(1, 2, 1, "300.0");
        commit(lane.voids(3, "Ines", null));
        assertThat(one(SCORE)).containsEntry("attempts", 1).containsEntry("mean_mm", null);
    }

    @Test
    void aRunThatCannotBePlayedAgainKeepsItsScoreAndSaysWhy() {
        commit(lane.holes("r1", null, "Ada", 1), lane.ends("r1", null, "Ada", 1, 1, 1, Double.NaN));
        new RecordBook(store).voids(1, INES);
        assertThat(one(SCORE)).containsEntry("attempts", 1).containsEntry("stations_cleared", 1);
        assertThat(one("SELECT became FROM amendment WHERE what = 'not-rescored'").get("became").toString())
                .contains("beginning never came");

        ScriptedLane other = new ScriptedLane("two", "j2");
        Event started = other.starts("r2", null, "Bo", 1);
        other.misses("r2", null, "Bo", 1, 5); // never comes
        commit(started, other.holes("r2", null, "Bo", 1), other.ends("r2", null, "Bo", 1, 2, 1, 5));
        new RecordBook(store).voids(2, INES);
        assertThat(all("SELECT became FROM amendment WHERE what = 'not-rescored'").toString())
                .contains("only 1 of its 2 putts ever came");
    }

    @Test
    void aPlayedRunComesOutAsItsLaneMadeIt() {
        Seed.fill(keeper, Instant.parse("2026-11-25T12:00:00Z"), 4, new Size(1, 1, 1, 1));
        String scores = "SELECT id, stations_cleared, attempts, holed, mean_miss_mm, ended_by FROM run ORDER BY id";
        String winners = "SELECT id, winner_id FROM duel ORDER BY id";
        List<Map<String, Object>> before = all(scores);
        List<Map<String, Object>> won = all(winners);
        List<Map<String, Object>> ended = all("SELECT r.id, min(a.id) AS putt FROM run r JOIN attempt a ON a.run_id = r.id "
                + "WHERE r.ended_by <> 'stopped' AND a.counts = 1 GROUP BY r.id ORDER BY r.id LIMIT 60");
        assertThat(ended).hasSize(60);

        for (Map<String, Object> each : ended) {
            new RecordBook(store).voids((int) each.get("putt"), INES);
        }
        assertThat(all(scores)).isNotEqualTo(before);
        for (Map<String, Object> each : ended) {
            new RecordBook(store).restores((int) each.get("putt"), INES);
        }
        assertThat(all(scores)).isEqualTo(before);
        assertThat(all(winners)).isEqualTo(won);
    }

    private void assertScore(int cleared, int attempts, int holed, String meanMm) {
        assertThat(one(SCORE)).containsEntry("stations_cleared", cleared).containsEntry("attempts", attempts)
                .containsEntry("holed", holed).containsEntry("ended_by", "out-of-balls");
        assertThat(one(SCORE).get("mean_mm")).hasToString(meanMm);
    }
}

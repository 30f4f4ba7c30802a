package org.cupbeam.studio.store.upkeep;

import java.util.List;
import org.cupbeam.studio.store.sums.Sum;
import org.jdbi.v3.core.Handle;

/**
 * What does not follow from events, brought over from the tables of the damaged store, {@code old}, into the one made anew: what
 * was imported, what is left of events that are gone, what staff wrote and changed. Numbers differ between the two, so a row is
 * found again by what names it; where its name is gone too, what hangs on it is left.
 */
final class CarriedOver {
    private static final String NEXT = "(SELECT coalesce(max(id), 0) FROM %s) + row_number() OVER (ORDER BY o.id)";
    /** A number of an event that is gone, and not one that was never given. */
    private static final String LOST = " NOT EXISTS (SELECT 1 FROM event e WHERE e.journal_id = m.new AND e.sequence = %1$s) AND %1$s BETWEEN 1 AND m.upto ";
    private static final String SCORE = "ended_by, stations_cleared, attempts, holed, mean_miss_mm";
    private static final String PUTT = "holed, finish_mm, finish_sd_mm, finish_low_mm, finish_high_mm, overshoot, speed_at_hole_mm_s, pace_mm, "
            + "rim, entered, breaks, slope, stimp_ft, stimp_sd_ft, counts";

    private static final List<String> WHO_IS_WHO = List.of(
            "CREATE TEMP TABLE jmap (old INTEGER PRIMARY KEY, new INTEGER, lane INTEGER, upto INTEGER)",
            "INSERT OR IGNORE INTO jmap SELECT e.old_journal, j.id, j.lane_id, 0 FROM (SELECT studio, lane, journal, old_journal, "
                    + "count(*) AS times FROM old.event WHERE old_journal IS NOT NULL GROUP BY 1, 2, 3, 4) e "
                    + "JOIN studio s ON s.name = e.studio JOIN lane l ON l.studio_id = s.id AND l.name = e.lane "
                    + "JOIN journal j ON j.lane_id = l.id AND j.name = e.journal ORDER BY e.times DESC",
            "INSERT OR IGNORE INTO jmap SELECT j.id, j.id, j.lane_id, 0 FROM old.journal o JOIN journal j ON j.id = o.id AND j.name = o.name "
                    + "AND j.lane_id = o.lane_id",
            "UPDATE jmap SET upto = max(coalesce((SELECT max(o.stored, o.imported_to) FROM old.journal o WHERE o.id = jmap.old "
                    + "AND max(o.stored, o.imported_to) < 1000000000), 0), coalesce((SELECT max(e.sequence) FROM event e WHERE e.journal_id = jmap.new), 0))",
            "CREATE TEMP TABLE pkept AS SELECT p.id FROM player p JOIN old.player o ON o.id = p.id AND o.name_key IS p.name_key AND o.created_ms = p.created_ms",
            "CREATE TEMP TABLE dmap AS SELECT o.id AS old, d.id AS new FROM old.drill o JOIN drill d ON d.terms = o.terms");

    private static final List<String> PLAYED = List.of(
            "INSERT OR IGNORE INTO duel (id, journal_id, name, ended_ms, ended_sequence, winner_id) SELECT " + next("duel") + ", m.new, o.name, "
                    + "o.ended_ms, o.ended_sequence, CASE WHEN o.winner_id IN (SELECT id FROM pkept) THEN o.winner_id END FROM old.duel o "
                    + "JOIN jmap m ON m.old = o.journal_id WHERE EXISTS (SELECT 1 FROM old.run r WHERE r.duel_id = o.id AND" + lost("r.started_sequence")
                    + ") AND NOT EXISTS (SELECT 1 FROM duel d WHERE d.journal_id = m.new AND d.name = o.name)",
            "CREATE TEMP TABLE umap AS SELECT o.id AS old, d.id AS new FROM old.duel o JOIN jmap m ON m.old = o.journal_id JOIN duel d "
                    + "ON d.journal_id = m.new AND d.name = o.name",
            "INSERT OR IGNORE INTO run (id, journal_id, lane_id, name, duel_id, player_id, drill_id, play_order, breaks, slope, limit_mm, "
                    + "started_sequence, started_ms, ended_sequence, ended_ms, " + SCORE + ") SELECT " + next("run") + ", m.new, m.lane, o.name, "
                    + "(SELECT u.new FROM umap u WHERE u.old = o.duel_id), o.player_id, (SELECT d.new FROM dmap d WHERE d.old = o.drill_id), o.play_order, "
                    + "o.breaks, o.slope, o.limit_mm, o.started_sequence, o.started_ms, o.ended_sequence, o.ended_ms, o.ended_by, o.stations_cleared, "
                    + "o.attempts, o.holed, o.mean_miss_mm FROM old.run o JOIN jmap m ON m.old = o.journal_id WHERE o.player_id IN (SELECT id FROM pkept) AND"
                    + lost("o.started_sequence") + "AND NOT EXISTS (SELECT 1 FROM run r WHERE r.journal_id = m.new AND r.name = o.name)",
            "CREATE TEMP TABLE rmap AS SELECT o.id AS old, r.id AS new, m.upto AS upto FROM old.run o JOIN jmap m ON m.old = o.journal_id JOIN run r "
                    + "ON r.journal_id = m.new AND r.name = o.name",
            "UPDATE run SET (drill_id, play_order, breaks, slope, limit_mm) = (SELECT d.new, o.play_order, o.breaks, o.slope, o.limit_mm FROM rmap m "
                    + "JOIN old.run o ON o.id = m.old JOIN dmap d ON d.old = o.drill_id WHERE m.new = run.id) WHERE drill_id IS NULL AND id IN "
                    + "(SELECT m.new FROM rmap m JOIN old.run o ON o.id = m.old JOIN dmap d ON d.old = o.drill_id)",
            "UPDATE run SET (ended_sequence, ended_ms, " + SCORE + ") = (SELECT o.ended_sequence, o.ended_ms, o.ended_by, o.stations_cleared, "
                    + "o.attempts, o.holed, o.mean_miss_mm FROM rmap m JOIN old.run o ON o.id = m.old WHERE m.new = run.id) WHERE ended_sequence IS NULL "
                    + "AND id IN (SELECT m.new FROM rmap m JOIN old.run o ON o.id = m.old WHERE o.ended_sequence BETWEEN 1 AND m.upto AND NOT EXISTS "
                    + "(SELECT 1 FROM event e WHERE e.journal_id = run.journal_id AND e.sequence = o.ended_sequence))",
            "INSERT OR IGNORE INTO attempt (id, journal_id, sequence, lane_id, at_ms, run_id, player_id, drill_id, station, station_mm, visit, ball, "
                    + "balls_left, " + PUTT + ") SELECT " + next("attempt") + ", m.new, o.sequence, m.lane, o.at_ms, r.id, r.player_id, r.drill_id, "
                    + inRun("station") + inRun("station_mm") + inRun("visit") + inRun("ball") + inRun("balls_left") + "o." + PUTT.replace(", ", ", o.")
                    + " FROM old.attempt o JOIN jmap m ON m.old = o.journal_id LEFT JOIN rmap x ON x.old = o.run_id LEFT JOIN run r ON r.id = x.new "
                    + "AND r.journal_id = m.new WHERE" + lost("o.sequence") + "AND NOT EXISTS (SELECT 1 FROM attempt a WHERE a.journal_id = m.new "
                    + "AND a.sequence = o.sequence)",
            "UPDATE attempt SET drill_id = (SELECT r.drill_id FROM run r WHERE r.id = attempt.run_id) WHERE run_id IS NOT NULL AND drill_id IS NULL",
            "CREATE TEMP TABLE amap AS SELECT o.id AS old, a.id AS new FROM old.attempt o JOIN jmap m ON m.old = o.journal_id JOIN attempt a "
                    + "ON a.journal_id = m.new AND a.sequence = o.sequence",
            "UPDATE journal SET imported_to = coalesce((SELECT max(a.sequence) FROM attempt a WHERE a.journal_id = journal.id AND NOT EXISTS "
                    + "(SELECT 1 FROM event e WHERE e.journal_id = a.journal_id AND e.sequence = a.sequence)), 0)");

    private static final List<String> CHANGED = List.of(
            "INSERT OR IGNORE INTO correction (journal_id, sequence, of_sequence, what, by_whom, reason, at_ms) SELECT m.new, o.sequence, "
                    + "o.of_sequence, o.what, o.by_whom, o.reason, o.at_ms FROM old.correction o JOIN jmap m ON m.old = o.journal_id WHERE" + lost("o.sequence"),
            "UPDATE attempt SET counts = 0 WHERE EXISTS (SELECT 1 FROM correction c WHERE c.journal_id = attempt.journal_id AND "
                    + "c.of_sequence = attempt.sequence)",
            "UPDATE attempt SET counts = (SELECT o.counts FROM amap x JOIN old.attempt o ON o.id = x.old WHERE x.new = attempt.id) WHERE id IN "
                    + "(SELECT x.new FROM amap x JOIN old.amendment c ON c.attempt_id = x.old AND c.what IN ('voided', 'restored') "
                    + "JOIN old.attempt o ON o.id = x.old AND o.counts IN (0, 1))",
            "CREATE TEMP TABLE changed AS SELECT old, new FROM rmap WHERE old IN (SELECT run_id FROM old.amendment UNION SELECT a.run_id "
                    + "FROM old.amendment c JOIN old.attempt a ON a.id = c.attempt_id)",
            "UPDATE run SET (" + SCORE + ") = (SELECT o.ended_by, o.stations_cleared, o.attempts, o.holed, o.mean_miss_mm FROM changed x "
                    + "JOIN old.run o ON o.id = x.old WHERE x.new = run.id) WHERE ended_sequence IS NOT NULL AND id IN (SELECT x.new FROM changed x "
                    + "JOIN old.run o ON o.id = x.old WHERE o.ended_sequence IS NOT NULL)",
            "UPDATE run SET player_id = (SELECT o.player_id FROM changed x JOIN old.run o ON o.id = x.old WHERE x.new = run.id) WHERE id IN "
                    + "(SELECT x.new FROM changed x JOIN old.run o ON o.id = x.old JOIN old.amendment c ON c.run_id = o.id AND c.what = 'reassigned' "
                    + "WHERE o.player_id IN (SELECT id FROM pkept))",
            "UPDATE attempt SET player_id = (SELECT r.player_id FROM run r WHERE r.id = attempt.run_id) WHERE run_id IN (SELECT new FROM changed)",
            "UPDATE duel SET winner_id = (SELECT o.winner_id FROM umap x JOIN old.duel o ON o.id = x.old WHERE x.new = duel.id) WHERE ended_ms IS NOT NULL "
                    + "AND id IN (SELECT r.duel_id FROM run r JOIN changed x ON x.new = r.id JOIN umap u ON u.new = r.duel_id JOIN old.duel o ON o.id = u.old "
                    + "WHERE o.winner_id IS NULL OR o.winner_id IN (SELECT id FROM pkept))",
            "INSERT INTO amendment (id, what, player_id, run_id, attempt_id, was, became, by_whom, reason, at_ms) SELECT " + next("amendment")
                    + ", o.what, o.player_id, r.new, a.new, o.was, o.became, o.by_whom, o.reason, o.at_ms FROM old.amendment o LEFT JOIN rmap r "
                    + "ON r.old = o.run_id LEFT JOIN amap a ON a.old = o.attempt_id WHERE " + aboutWhatIsThere() + " AND o.what IS NOT NULL AND "
                    + "o.by_whom IS NOT NULL AND o.at_ms IS NOT NULL AND NOT EXISTS (SELECT 1 FROM amendment n WHERE n.what = o.what AND "
                    + "n.at_ms = o.at_ms AND n.run_id IS r.new AND n.attempt_id IS a.new AND n.player_id IS o.player_id AND n.became IS o.became)",
            "INSERT INTO note (id, player_id, run_id, attempt_id, author, words, at_ms, withdrawn_ms, withdrawn_by, studios) SELECT " + next("note")
                    + ", o.player_id, r.new, a.new, o.author, o.words, o.at_ms, o.withdrawn_ms, o.withdrawn_by, o.studios FROM old.note o LEFT JOIN rmap r "
                    + "ON r.old = o.run_id LEFT JOIN amap a ON a.old = o.attempt_id WHERE " + aboutWhatIsThere()
                    + " AND o.author IS NOT NULL AND o.words IS NOT NULL AND o.at_ms IS NOT NULL",
            "INSERT INTO fault (id, lane_id, sign, words, began_ms, ended_ms) SELECT " + next("fault") + ", l.id, o.sign, o.words, o.began_ms, o.ended_ms "
                    + "FROM old.fault o JOIN old.lane p ON p.id = o.lane_id JOIN old.studio q ON q.id = p.studio_id JOIN studio s ON s.name = q.name "
                    + "JOIN lane l ON l.studio_id = s.id AND l.name = p.name WHERE o.sign IS NOT NULL AND o.words IS NOT NULL AND o.began_ms IS NOT NULL");

    private static final List<String> LEFT_OVER = List.of(
            "DELETE FROM player_alias WHERE name_key = 'forgotten player ' || player_id",
            "DELETE FROM journal WHERE NOT EXISTS (SELECT 1 FROM event e WHERE e.journal_id = journal.id) AND NOT EXISTS (SELECT 1 FROM attempt a "
                    + "WHERE a.journal_id = journal.id) AND NOT EXISTS (SELECT 1 FROM run r WHERE r.journal_id = journal.id) AND NOT EXISTS "
                    + "(SELECT 1 FROM duel d WHERE d.journal_id = journal.id) AND NOT EXISTS (SELECT 1 FROM correction c WHERE c.journal_id = journal.id)");

    private CarriedOver() {
    }

    /** Within a transaction. */
    static void all(Handle h) {
        for (List<String> each : List.of(WHO_IS_WHO, PLAYED, CHANGED, LEFT_OVER)) {
            each.forEach(h::execute);
        }
        Sum.ALL.forEach(each -> each.make(h));
    }

    private static String next(String table) {
        return NEXT.formatted(table);
    }

    private static String lost(String sequence) {
        return LOST.formatted(sequence);
    }

    private static String inRun(String column) {
        return "CASE WHEN r.id IS NOT NULL THEN o." + column + " END, ";
    }

    private static String aboutWhatIsThere() {
        return "(o.player_id IS NULL OR o.player_id IN (SELECT id FROM pkept)) AND (o.run_id IS NULL OR r.new IS NOT NULL) AND "
                + "(o.attempt_id IS NULL OR a.new IS NOT NULL)";
    }
}

package org.cupbeam.studio.store.upkeep;

import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.cupbeam.event.Event;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.ingest.Batch;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Keeper;
import org.cupbeam.studio.store.Store;

/** What two lanes said through some evenings, and what a store makes of it. */
public final class Evenings {
    private static final Instant NOW = Instant.parse("2026-11-25T19:00:00Z");
    private static final List<String> STORY = List.of(
            "SELECT j.name, e.sequence, e.type, e.envelope, e.at_ms, e.synchronised, e.problem FROM event e JOIN journal j ON j.id = e.journal_id ORDER BY 1, 2",
            "SELECT j.name, a.sequence, r.name, p.name, d.name, a.station, a.holed, a.counts, a.finish_mm, a.at_ms FROM attempt a "
                    + "JOIN journal j ON j.id = a.journal_id LEFT JOIN run r ON r.id = a.run_id LEFT JOIN player p ON p.id = a.player_id "
                    + "LEFT JOIN drill d ON d.id = a.drill_id ORDER BY 1, 2",
            "SELECT j.name, r.name, p.name, d.name, u.name, r.play_order, r.started_sequence, r.started_ms, r.ended_sequence, r.ended_ms, "
                    + "r.ended_by, r.stations_cleared, r.attempts, r.holed, r.mean_miss_mm FROM run r JOIN journal j ON j.id = r.journal_id "
                    + "JOIN player p ON p.id = r.player_id JOIN drill d ON d.id = r.drill_id LEFT JOIN duel u ON u.id = r.duel_id ORDER BY 1, 2",
            "SELECT j.name, u.name, u.ended_sequence, u.ended_ms, p.name FROM duel u JOIN journal j ON j.id = u.journal_id "
                    + "LEFT JOIN player p ON p.id = u.winner_id ORDER BY 1, 2",
            "SELECT j.name, c.sequence, c.of_sequence, c.what, c.by_whom, c.reason, c.at_ms FROM correction c "
                    + "JOIN journal j ON j.id = c.journal_id ORDER BY 1, 2",
            "SELECT l.name, q.quarter, q.putts, q.holed, q.first_ms, q.last_ms, q.play_ms FROM lane_quarter q JOIN lane l ON l.id = q.lane_id ORDER BY 1, 2",
            "SELECT name, stored FROM journal ORDER BY 1");

    private final List<List<Event>> lanes = new ArrayList<>();

    public Evenings(int games) {
        for (String name : List.of("one", "two")) {
            ScriptedLane lane = new ScriptedLane("bay-" + name, "journal" + name);
            List<Event> said = new ArrayList<>();
            for (int game = 0; game < games; game++) {
                play(lane, said, game, game % 2 == 0 ? List.of("Ana", "Bo") : List.of("Cyd", "Dee"));
            }
            lanes.add(said);
        }
    }

    /** A duel with a putt taken back, and in every other one an end that did not hold. */
    private static void play(ScriptedLane lane, List<Event> said, int game, List<String> players) {
        String duel = "duel-" + game;
        List<String> runs = List.of("run-" + game + "-a", "run-" + game + "-b");
        if (game % 3 == 2) {
            lane.boots("boot-" + game, Instant.EPOCH);
        }
        for (int i = 0; i < 2; i++) {
            said.add(lane.starts(runs.get(i), duel, players.get(i), i + 1));
        }
        for (int ball = 0; ball < 5; ball++) {
            int who = ball % 2;
            lane.passes(40);
            said.add(ball % 3 == 0 ? lane.holes(runs.get(who), duel, players.get(who), 1 + ball / 2)
                    : lane.misses(runs.get(who), duel, players.get(who), 1 + ball / 2, 200 + 10 * ball));
            if (ball == 2) {
                said.add(lane.takesBack(lane.sequence()));
            }
        }
        if (game % 3 == 2) {
            said.add(lane.setsClock(Instant.parse("2026-11-20T18:00:00Z").plusSeconds(3_600L * game)));
        }
        said.add(lane.passes(10).misses(runs.get(0), duel, players.get(0), 2, 300));
        said.add(lane.ends(runs.get(0), duel, players.get(0), 1, 3, 1, 250));
        if (game % 2 == 1) { // the last putt, and with it the end, is taken back
            said.add(lane.takesBack(lane.sequence() - 1));
            said.add(lane.passes(30).holes(runs.get(0), duel, players.get(0), 2));
            said.add(lane.ends(runs.get(0), duel, players.get(0), 2, 3, 2, 240));
        }
        said.add(lane.puttsOutsideAnyRun());
        said.add(lane.ends(runs.get(1), duel, players.get(1), 0, 2, 1, 230));
        said.add(lane.endsDuel(duel, players.get(0)));
    }

    public List<Event> all() {
        return lanes.stream().flatMap(List::stream).toList();
    }

    /** Each lane sends what lies beyond what the store says that it has, as far as it still holds it, up to its last one. */
    void sendTo(Store store, int share) {
        Keeper keeper = new Keeper(store);
        Map<String, Long> kept = new HashMap<>();
        keeper.kept().forEach(each -> kept.put(each.source().journal(), each.upTo()));
        for (List<Event> lane : lanes) {
            List<Arrival> due = lane.subList(0, lane.size() * share / 100).stream()
                    .filter(each -> each.sequence() > kept.getOrDefault(each.source().journal(), 0L)).map(each ->
                            new Arrival(each.source(), each.sequence(), each.time(), each, null, ScriptedLane.json(each), NOW)).toList();
            for (int from = 0; from < due.size(); from += 7) {
                keeper.commit(new Batch(due.subList(from, Math.min(due.size(), from + 7)), List.of(), List.of()));
            }
        }
    }

    void sendTo(Path file, int share) {
        try (Store store = Store.open(Database.file(file))) {
            sendTo(store, share);
        }
    }

    /** All that pages tell of these evenings. */
    static List<List<String>> story(Path file) {
        try (Store store = Store.open(Database.file(file))) {
            return story(store);
        }
    }

    /** The same, of an open store. */
    public static List<List<String>> story(Store store) {
        return STORY.stream().map(sql -> store.read(h -> h.createQuery(sql).map((row, ctx) -> line(row)).list())).toList();
    }

    private static String line(ResultSet row) throws SQLException {
        StringBuilder line = new StringBuilder();
        for (int i = 1; i <= row.getMetaData().getColumnCount(); i++) {
            line.append(i == 1 ? "" : "|").append(row.getString(i));
        }
        return line.toString();
    }
}

package org.cupbeam.studio.store.logbook;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.cupbeam.drill.Drill;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.Data;
import org.cupbeam.event.DrillJson;
import org.cupbeam.event.Play;
import org.cupbeam.event.Score;
import org.cupbeam.studio.store.LateEntries;
import org.cupbeam.studio.store.NoteBook;
import org.cupbeam.studio.store.PlayerBook;
import org.cupbeam.studio.store.Sight;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.sheet.BadRow;
import org.cupbeam.studio.store.sheet.Cells;
import org.cupbeam.studio.store.sums.Whose;
import org.jdbi.v3.core.Handle;

/** Rows of an import, each entered where it is not there yet. */
final class EnteredRows {
    /** The tables that are taken, and in this order make the fewest guesses necessary. */
    static final List<String> SHEETS = List.of("players", "runs", "attempts", "notes", "changes");

    private final Store store;
    private final Handle h;
    private final LateEntries entries;

    EnteredRows(Store store, Handle h, LateEntries entries) {
        this.store = store;
        this.h = h;
        this.entries = entries;
    }

    /** A column that only this table has. */
    static String mark(String sheet) {
        return switch (sheet) {
            case "players" -> "hand";
            case "runs" -> "stations_cleared";
            case "attempts" -> "finish_mm";
            case "notes" -> "words";
            default -> "what";
        };
    }

    /** @return false where it is there already */
    boolean enter(String sheet, Cells cells) throws BadRow {
        return switch (sheet) {
            case "players" -> player(cells);
            case "runs" -> run(cells);
            case "attempts" -> attempt(cells);
            case "notes" -> note(cells);
            default -> change(cells);
        };
    }

    void done() {
        entries.done();
    }

    private boolean player(Cells cells) throws BadRow {
        String name = cells.text("name", Score.MAX_NAME);
        String hand = oneOf(cells, "hand", Set.of("left", "right"));
        String units = oneOf(cells, "units", Set.of("metric", "feet"));
        String remark = cells.textOrNull("remark", PlayerBook.LONGEST_REMARK);
        if (Players.named(h, Sight.ALL, name).isPresent()) {
            return false;
        }
        int id = entries.player(name, SheetRows.time(cells, "created"));
        h.execute("UPDATE player SET hand = ?, units = ?, remark = ? WHERE id = ?", hand, units, remark, id);
        return true;
    }

    private boolean run(Cells cells) throws BadRow {
        RunRow run = SheetRows.run(cells);
        RunRow.Result end = run.result();
        Data.Of of = new Data.Of(run.name(), run.duelName(), run.player(), run.order());
        LateEntries.Ended ended = end == null ? null : new LateEntries.Ended(end.sequence(), end.endedMs(),
                new Data.RunEnded(null, of, end.stationsCleared(), end.attempts(), end.holed(), end.meanMissMm(),
                        end.endedBy()), end.won());
        return entries.run(new LateEntries.At(run.source(), run.sequence(), run.startedMs()), of, run.playerId(),
                drill(cells, run.terms()), run.tags(), run.limitMm(), ended);
    }

    private boolean attempt(Cells cells) throws BadRow {
        AttemptRow row = SheetRows.attempt(cells);
        AttemptRow.Of of = row.of();
        Play play = of == null ? null : new Play(of.runName(), null, of.player(), of.drill(), of.station(), of.stationMm(),
                of.visit(), of.ball(), of.ballsLeft());
        return entries.attempt(new LateEntries.At(row.source(), row.sequence(), row.atMs()),
                new Data.Attempt(null, row.putt(), play, row.tags(), row.green()), of == null ? 0 : of.playerId(),
                row.counts());
    }

    private boolean note(Cells cells) throws BadRow {
        String author = cells.text("author", Score.MAX_NAME);
        String words = cells.text("words", NoteBook.LONGEST);
        long atMs = SheetRows.time(cells, "at");
        entries.done();
        String about = cells.has("sequence") ? "attempt_id" : cells.has("run") ? "run_id" : "player_id";
        int id = about(cells, about);
        boolean known = h.select("SELECT 1 FROM note WHERE " + about + " = ? AND author = ? AND words = ? AND at_ms = ?", id,
                author, words, atMs).mapTo(Integer.class).findFirst().isPresent();
        if (!known) {
            int note = store.next(h, "note");
            h.execute("INSERT INTO note (id, " + about + ", author, words, at_ms) VALUES (?, ?, ?, ?, ?)", note, id, author, words, atMs);
            Whose.note(h, note);
        }
        return !known;
    }

    private int about(Cells cells, String about) throws BadRow {
        Optional<Integer> found = about.equals("player_id")
                ? Players.named(h, Sight.ALL, cells.text("player", Score.MAX_NAME)).map(PlayerRow::id)
                : about.equals("run_id") ? entries.findRun(SheetRows.source(cells), cells.text("run", 64))
                : entries.findAttempt(SheetRows.source(cells), cells.whole("sequence", 1));
        return found.orElseThrow(() -> cells.bad(about.replace("_id", ""), "is not in the record",
                "take in what it is about first"));
    }

    /** Only what was said of attempts and of runs' scores: names stand in the other tables as they are now. */
    private boolean change(Cells cells) throws BadRow {
        String what = cells.text("what", 20);
        if (Set.of("rescored", "not-rescored").contains(what)) {
            return rescored(cells, what);
        }
        if (!cells.has("sequence") || !Set.of("taken-back", "voided", "restored").contains(what)) {
            return false;
        }
        entries.done();
        return entries.change(SheetRows.source(cells), cells.whole("sequence", 1), cells.wholeOrNull("said_by_event", 1),
                what, cells.text("by", Score.MAX_NAME), cells.textOrNull("reason", 400), SheetRows.time(cells, "at"));
    }

    private boolean rescored(Cells cells, String what) throws BadRow {
        entries.done();
        return entries.change(about(cells, "run_id"), what, cells.textOrNull("was", 400), cells.text("became", 400),
                cells.text("by", Score.MAX_NAME), cells.textOrNull("reason", 400), SheetRows.time(cells, "at"));
    }

    private static Drill drill(Cells cells, String terms) throws BadRow {
        try {
            return terms == null ? null : DrillJson.read(terms);
        } catch (BadMessage e) {
            throw new BadRow(cells.where() + ", terms: " + e.getMessage());
        }
    }

    private static String oneOf(Cells cells, String column, Set<String> words) throws BadRow {
        String word = cells.textOrNull(column, 20);
        if (word != null && !words.contains(word)) {
            throw cells.bad(column, "is " + cells.shown(column), "give one of " + words);
        }
        return word;
    }
}

package org.cupbeam.studio.store.logbook;

import java.time.DateTimeException;
import java.time.Instant;
import org.cupbeam.drill.EndedBy;
import org.cupbeam.drill.Worded;
import org.cupbeam.event.GreenNow;
import org.cupbeam.event.Putt;
import org.cupbeam.event.Source;
import org.cupbeam.event.Tags;
import org.cupbeam.event.Words;
import org.cupbeam.studio.store.sheet.BadRow;
import org.cupbeam.studio.store.sheet.Cells;

/** Rows of {@link LogSheets}' tables, read back. Numbers that are only this store's own are 0 in them. */
final class SheetRows {
    private static final int ID = 64;
    private static final int NAME = 40;
    private static final int TERMS = 8_000;

    private SheetRows() {
    }

    static RunRow run(Cells from) throws BadRow {
        RunRow.Result result = !from.has("ended") ? null : new RunRow.Result(from.whole("ended_sequence", 1),
                time(from, "ended"), word(from, "ended_by", EndedBy.class), from.count("stations_cleared", 0),
                from.count("attempts", 0), from.count("holed", 0), from.number("mean_miss_mm"),
                from.has("won") ? (Boolean) from.flag("won") : null);
        return new RunRow(0, source(from), 0, from.text("run", ID), null, from.textOrNull("duel", ID),
                from.count("order", 1), nobody(from), from.textOrNull("player", NAME), null,
                from.textOrNull("terms", TERMS), tags(from), from.number("limit_mm"), from.whole("started_sequence", 1),
                time(from, "started"), result);
    }

    static AttemptRow attempt(Cells from) throws BadRow {
        AttemptRow.Of of = !from.has("run") ? null : new AttemptRow.Of(0, from.text("run", ID), nobody(from),
                from.textOrNull("player", NAME), from.textOrNull("drill", TERMS), from.count("station", 1),
                from.number("station_mm"), from.count("visit", 1), from.count("ball", 1),
                from.count("balls_left", 0));
        Putt putt = new Putt(word(from, "outcome", Putt.Outcome.class), from.number("finish_mm"),
                from.number("finish_sd_mm"), from.number("finish_low_mm"), from.number("finish_high_mm"),
                from.flag("overshoot"), from.number("speed_at_hole_mm_s"), from.number("pace_mm"), from.flag("rim"),
                word(from, "how", Putt.How.class));
        return new AttemptRow(0, source(from), 0, from.whole("sequence", 1), time(from, "at"), of, putt, tags(from),
                new GreenNow(from.number("stimp_ft"), from.number("stimp_sd_ft"), Double.NaN), from.flag("counts"));
    }

    static Source source(Cells from) throws BadRow {
        try {
            return new Source(from.text("studio", ID), from.text("lane", ID), from.text("journal", ID));
        } catch (IllegalArgumentException e) {
            throw from.bad("journal", "with studio and lane names no journal", "give names as lanes have them");
        }
    }

    static long time(Cells from, String column) throws BadRow {
        try {
            return Instant.parse(from.text(column, ID)).toEpochMilli();
        } catch (DateTimeException | ArithmeticException e) {
            throw from.bad(column, "is " + from.shown(column), "give a time as 2026-11-25T18:00:00Z");
        }
    }

    static <E extends Enum<E> & Worded> E word(Cells from, String column, Class<E> type) throws BadRow {
        E word = wordOrNull(from, column, type);
        if (word == null) {
            throw from.bad(column, "is empty", "give a word as the export writes it");
        }
        return word;
    }

    private static <E extends Enum<E> & Worded> E wordOrNull(Cells from, String column, Class<E> type) throws BadRow {
        String text = from.textOrNull(column, ID);
        E word = text == null ? null : Words.find(type, text);
        if (text != null && word == null) {
            throw from.bad(column, "is " + from.shown(column), "give a word as the export writes it");
        }
        return word;
    }

    private static Tags tags(Cells from) throws BadRow {
        return new Tags(wordOrNull(from, "break", Tags.Break.class), wordOrNull(from, "slope", Tags.Slope.class));
    }

    /** Who it was where the name is not known any more. */
    private static int nobody(Cells from) throws BadRow {
        Long number = from.wholeOrNull(LogSheets.NUMBER, 0);
        return number == null ? 0 : (int) Math.min(number, Integer.MAX_VALUE);
    }
}

package org.cupbeam.studio.web;

import io.javalin.http.Context;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import org.cupbeam.drill.Worded;
import org.cupbeam.event.Tags;
import org.cupbeam.event.Words;
import org.cupbeam.studio.store.logbook.Cursor;
import org.cupbeam.studio.store.logbook.LogFilter;

/** What a request asks for of the record, read from its address. Whatever makes no sense is refused in words. */
final class LogbookFilter {
    private static final int LONGEST = 100;
    private static final int MOST_ROWS = 200;

    private LogbookFilter() {
    }

    /** Of what whoever asks sees. @param zone in which the days {@code from} and {@code to}, both included, begin and end */
    static LogFilter of(Context ctx, ZoneId zone) {
        LocalDate from = day(ctx, "from");
        LocalDate to = day(ctx, "to");
        return new LogFilter(number(ctx, "player"), text(ctx, "drill"), word(ctx, "breaks", Tags.Break.class),
                word(ctx, "slope", Tags.Slope.class), number(ctx, "lane"), from == null ? null : startMs(from, zone),
                to == null ? null : startMs(to.plusDays(1), zone), Access.scope(ctx.req()));
    }

    static Cursor after(Context ctx) {
        String text = text(ctx, "after");
        try {
            return text == null ? null : Cursor.parse(text);
        } catch (IllegalArgumentException e) {
            throw Refusal.badRequest(e.getMessage());
        }
    }

    /** How many rows a page is to have. */
    static int limit(Context ctx, int usually) {
        Integer asked = number(ctx, "limit");
        return asked == null ? usually : Math.max(1, Math.min(MOST_ROWS, asked));
    }

    /** The number in the address's path. */
    static int id(Context ctx) {
        String text = ctx.pathParam("id");
        Integer id = wholeOrNull(text);
        if (id == null) {
            throw Refusal.notFound("There is nothing of that number.");
        }
        return id;
    }

    static LocalDate day(Context ctx, String name) {
        String text = text(ctx, name);
        try {
            LocalDate day = text == null ? null : LocalDate.parse(text);
            if (day == null || day.getYear() >= 1970 && day.getYear() <= 9998) {
                return day;
            }
        } catch (DateTimeParseException e) {
            // Told below.
        }
        throw Refusal.badRequest(name + ": give a day as 2026-11-25.");
    }

    static long startMs(LocalDate day, ZoneId zone) {
        return day.atStartOfDay(zone).toInstant().toEpochMilli();
    }

    /** Null where it is not there, or empty. */
    static String text(Context ctx, String name) {
        String text = ctx.queryParam(name);
        if (text == null || text.isBlank()) {
            return null;
        }
        if (text.length() > LONGEST) {
            throw Refusal.badRequest(name + ": give at most " + LONGEST + " characters.");
        }
        return text;
    }

    private static Integer number(Context ctx, String name) {
        String text = text(ctx, name);
        Integer number = text == null ? null : wholeOrNull(text);
        if (text != null && number == null) {
            throw Refusal.badRequest(name + ": give a number.");
        }
        return number;
    }

    private static Integer wholeOrNull(String text) {
        try {
            return text.length() > 10 ? null : Integer.valueOf(text);
        } catch (NumberFormatException e) {
            return null;
        }
    }

    private static <E extends Enum<E> & Worded> E word(Context ctx, String name, Class<E> type) {
        String text = text(ctx, name);
        E found = text == null ? null : Words.find(type, text);
        if (text != null && found == null) {
            throw Refusal.badRequest(name + ": is none of those there are.");
        }
        return found;
    }
}

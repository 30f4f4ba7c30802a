package org.cupbeam.studio.store.logbook;

import java.util.List;
import java.util.function.Function;

/**
 * A part of a list.
 *
 * @param next to ask for the next part with; null where this is the last
 */
public record Page<T>(List<T> rows, Cursor next) {
    /** The most rows of a page. */
    public static final int MOST = 1_000;

    public Page {
        rows = List.copyOf(rows);
    }

    /** A page of rows of which one more than fits was asked for. */
    static <T> Page<T> of(List<T> oneMore, int limit, Function<T, Cursor> place) {
        return oneMore.size() <= limit ? new Page<>(oneMore, null)
                : new Page<>(oneMore.subList(0, limit), place.apply(oneMore.get(limit - 1)));
    }

    /** A page's size as asked for, within bounds. */
    static int bounded(int limit) {
        return Math.max(1, Math.min(MOST, limit));
    }
}

package org.cupbeam.studio.store.sheet;

import java.util.List;

/**
 * A table to be written.
 *
 * @param name    of the table, as {@code runs}
 * @param columns their names, each once
 * @param rows    as wide as the columns; a cell is a text, a number, a truth value or null. Gone through once
 */
public record Sheet(String name, List<String> columns, Iterable<List<Object>> rows) {
    public Sheet {
        columns = List.copyOf(columns);
    }
}

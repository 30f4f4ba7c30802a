package org.cupbeam.studio.store;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntConsumer;
import org.jdbi.v3.core.Handle;

/**
 * Rows' numbers by what names them: found, or given where the row is new. There is one writer, so it counts itself; it
 * remembers what it has looked up, until something goes wrong.
 */
final class Numbers {
    private static final int MOST_REMEMBERED = 20_000;

    private final Map<String, Integer> last = new HashMap<>();
    private final Map<List<Object>, Integer> remembered = new LinkedHashMap<>(64, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<List<Object>, Integer> eldest) {
            return size() > MOST_REMEMBERED;
        }
    };

    /** A number that no row of the table has. */
    int next(Handle handle, String table) {
        int number = last.computeIfAbsent(table, t ->
                handle.createQuery("SELECT coalesce(max(id), 0) FROM " + t).mapTo(Integer.class).one()) + 1;
        last.put(table, number);
        return number;
    }

    /**
     * The number of the row whose columns have these values; a new row's where there is none.
     *
     * @param columns as {@code "studio_id = ? AND name = ?"}
     * @param insert  makes the row with the number that it is given
     */
    int of(Handle handle, String table, String columns, List<Object> values, IntConsumer insert) {
        List<Object> key = List.of(table, values);
        Integer known = remembered.get(key);
        if (known == null) {
            known = find(handle, table, columns, values).orElseGet(() -> {
                int number = next(handle, table);
                insert.accept(number);
                return number;
            });
            remembered.put(key, known);
        }
        return known;
    }

    /** A transaction was undone: what was looked up in it may not be there. */
    void forget() {
        last.clear();
        remembered.clear();
    }

    private static Optional<Integer> find(Handle handle, String table, String columns, List<Object> values) {
        return handle.select("SELECT id FROM " + table + " WHERE " + columns, values.toArray())
                .mapTo(Integer.class).findOne();
    }
}

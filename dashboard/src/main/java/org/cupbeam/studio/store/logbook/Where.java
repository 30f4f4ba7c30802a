package org.cupbeam.studio.store.logbook;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Conditions, and the values that belong in them. */
final class Where {
    private final StringBuilder sql = new StringBuilder("1 = 1");
    private final List<Object> values = new ArrayList<>();

    Where and(String condition, Object... itsValues) {
        sql.append(" AND ").append(condition);
        values.addAll(Arrays.asList(itsValues));
        return this;
    }

    /** The same where there is a value; otherwise anything is right. */
    Where andIf(String condition, Object valueOrNull) {
        return valueOrNull == null ? this : and(condition, valueOrNull);
    }

    String sql() {
        return sql.toString();
    }

    /** The values, and more after them. */
    Object[] values(Object... more) {
        List<Object> all = new ArrayList<>(values);
        all.addAll(Arrays.asList(more));
        return all.toArray();
    }
}

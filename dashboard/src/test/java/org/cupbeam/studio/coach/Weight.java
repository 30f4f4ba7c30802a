package org.cupbeam.studio.coach;

import java.lang.reflect.Array;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Collections;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What an object and all that it leads to take in memory, as a JVM with compressed references lays them out. */
final class Weight {
    private static final int HEADER = 12;
    private static final int REFERENCE = 4;

    private final Set<Object> seen = Collections.newSetFromMap(new IdentityHashMap<>());
    private final Deque<Object> ahead = new ArrayDeque<>();

    private Weight() {
    }

    static long of(Object root) {
        Weight weight = new Weight();
        weight.goesTo(root);
        long sum = 0;
        while (!weight.ahead.isEmpty()) {
            sum += aligned(weight.alone(weight.ahead.pop()));
        }
        return sum;
    }

    private void goesTo(Object orNull) {
        if (orNull != null && !(orNull instanceof Enum) && !(orNull instanceof Class) && seen.add(orNull)) {
            ahead.push(orNull);
        }
    }

    private long alone(Object object) {
        if (object instanceof String text) {
            return HEADER + 12 + aligned(HEADER + 4 + text.length());
        }
        if (object instanceof Collection<?> all) {
            all.forEach(this::goesTo);
            return 2 * HEADER + 8 + (long) REFERENCE * all.size();
        }
        if (object instanceof Map<?, ?> map) {
            map.keySet().forEach(this::goesTo);
            map.values().forEach(this::goesTo);
            return 48 + 32L * map.size();
        }
        if (object instanceof Optional<?> optional) {
            optional.ifPresent(this::goesTo);
            return HEADER + REFERENCE;
        }
        return object.getClass().isArray() ? array(object) : object instanceof Number ? 24 : fields(object);
    }

    private long array(Object array) {
        Class<?> of = array.getClass().getComponentType();
        for (int i = 0; !of.isPrimitive() && i < Array.getLength(array); i++) {
            goesTo(Array.get(array, i));
        }
        return HEADER + 4 + (long) size(of) * Array.getLength(array);
    }

    private long fields(Object object) {
        long sum = HEADER;
        for (Class<?> type = object.getClass(); type != null; type = type.getSuperclass()) {
            for (Field field : type.getDeclaredFields()) {
                if (!Modifier.isStatic(field.getModifiers())) {
                    sum += size(field.getType());
                    if (!field.getType().isPrimitive()) {
                        goesTo(value(field, object));
                    }
                }
            }
        }
        return sum;
    }

    private static Object value(Field field, Object object) {
        try {
            field.setAccessible(true);
            return field.get(object);
        } catch (IllegalAccessException e) {
            throw new AssertionError(field.toString(), e);
        }
    }

    private static int size(Class<?> type) {
        return type == double.class || type == long.class ? 8 : type == boolean.class || type == byte.class ? 1 : 4;
    }

    private static long aligned(long bytes) {
        return (bytes + 7) / 8 * 8;
    }
}

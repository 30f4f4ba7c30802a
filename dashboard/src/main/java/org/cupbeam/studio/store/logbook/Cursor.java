package org.cupbeam.studio.store.logbook;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Where in a list a page ended: the keys of its last row. As text it fits an address. */
public record Cursor(List<Long> keys) {
    private static final int MOST_KEYS = 4;

    public Cursor {
        keys = List.copyOf(keys);
    }

    static Cursor of(long... keys) {
        List<Long> all = new ArrayList<>();
        for (long each : keys) {
            all.add(each);
        }
        return new Cursor(all);
    }

    /** @throws IllegalArgumentException for a text that is none */
    public static Cursor parse(String text) {
        String[] parts = text.split("_", -1);
        try {
            List<Long> keys = new ArrayList<>();
            for (String part : parts) {
                keys.add(Long.parseLong(part));
            }
            if (keys.size() <= MOST_KEYS) {
                return new Cursor(keys);
            }
        } catch (NumberFormatException e) {
            // said below
        }
        throw new IllegalArgumentException("place in the list: is no place; begin with the first page");
    }

    /** @throws IllegalArgumentException where it is another list's */
    Object[] keys(int count) {
        if (keys.size() != count) {
            throw new IllegalArgumentException("place in the list: is another list's; begin with the first page");
        }
        return keys.toArray();
    }

    @Override
    public String toString() {
        return keys.stream().map(String::valueOf).collect(Collectors.joining("_"));
    }
}

package org.cupbeam.event;

import java.util.Arrays;
import java.util.stream.Collectors;
import org.cupbeam.drill.Worded;

/** Constants by their words. */
public final class Words {
    private Words() {
    }

    /** The constant for a word, or null. */
    public static <E extends Enum<E> & Worded> E find(Class<E> type, String word) {
        for (E each : type.getEnumConstants()) {
            if (each.word().equals(word)) {
                return each;
            }
        }
        return null;
    }

    static <E extends Enum<E> & Worded> String all(Class<E> type) {
        return Arrays.stream(type.getEnumConstants()).map(Worded::word).collect(Collectors.joining(", "));
    }
}

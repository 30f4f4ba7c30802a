package org.cupbeam.event;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/** The wire's word for a constant: its name in lower case, with hyphens. */
public final class Words {
    private Words() {
    }

    public static String of(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The constant for a word, or null. */
    public static <E extends Enum<E>> E find(Class<E> type, String word) {
        for (E each : type.getEnumConstants()) {
            if (of(each).equals(word)) {
                return each;
            }
        }
        return null;
    }

    static <E extends Enum<E>> String all(Class<E> type) {
        return Arrays.stream(type.getEnumConstants()).map(Words::of).collect(Collectors.joining(", "));
    }
}

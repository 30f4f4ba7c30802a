package org.cupbeam.drill;

import java.util.Locale;

/** A choice that has a word of its own in files and messages: its name in lower case, joined by hyphens. */
public interface Worded {
    /** The constant's name in code. */
    String name();

    /** Its word, such as {@code every-station}. */
    default String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}

package org.cupbeam.studio.store;

import java.text.Normalizer;
import java.util.Locale;

/** What tells players apart: one name is one person, however it is spaced and whatever its case. */
public final class NameKey {
    private NameKey() {
    }

    public static String of(String name) {
        return Normalizer.normalize(name, Normalizer.Form.NFKC).strip().replaceAll("\\s+", " ")
                .toLowerCase(Locale.ROOT);
    }
}

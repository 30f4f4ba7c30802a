package org.cupbeam.event;

import java.nio.charset.StandardCharsets;

/** A drill's terms as JSON of their own, the keys of the drill file one to one. */
public final class DrillJson {
    private DrillJson() {
    }

    /** Equal terms give equal text. */
    public static String text(DrillTerms terms) {
        return new String(JsonOut.bytes(to -> Parts.drill(to, terms)), StandardCharsets.UTF_8);
    }

    public static DrillTerms read(String text) throws BadMessage {
        return Parts.drill(JsonIn.object(text.getBytes(StandardCharsets.UTF_8)));
    }
}

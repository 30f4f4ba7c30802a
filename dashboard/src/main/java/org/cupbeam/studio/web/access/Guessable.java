package org.cupbeam.studio.web.access;

import java.text.Normalizer;
import java.util.Optional;

/** What speaks against a PIN or a secret that somebody chose. */
final class Guessable {
    private Guessable() {
    }

    /** @param what as a sentence begins with it; what is short is told with what would do */
    static Optional<String> objection(String what, int shortest, int longest, String given) {
        String text = normal(given);
        if (text.length() < shortest || text.length() > longest) {
            return Optional.of(what + " has " + shortest + " to " + longest + " characters; digits will do.");
        }
        if (text.codePoints().anyMatch(Character::isISOControl)) {
            return Optional.of(what + " is made of characters that can be seen; digits will do.");
        }
        boolean steady = true;
        int step = text.charAt(1) - text.charAt(0);
        for (int i = 1; i < text.length(); i++) {
            steady &= text.charAt(i) - text.charAt(i - 1) == step;
        }
        return steady && Math.abs(step) <= 1
                ? Optional.of("That is the first one that anybody would try. Choose one without such an order.")
                : Optional.empty();
    }

    /** One text, whichever keyboard wrote it. */
    static String normal(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFKC);
    }
}

package org.cupbeam.studio.store;

/** What may be written by people into the record. */
public final class Texts {
    /** The longest name, in characters: as long as lanes take. */
    public static final int NAME = 40;

    private Texts() {
    }

    /**
     * A text on one line, without spaces around it.
     *
     * @throws IllegalArgumentException with what is wrong and what would do
     */
    public static String line(String what, String text, int longest) {
        return checked(what, text, longest, false);
    }

    /** The same, on more lines than one. */
    static String lines(String what, String text, int longest) {
        return checked(what, text, longest, true);
    }

    private static String checked(String what, String text, int longest, boolean lines) {
        String stripped = text == null ? "" : text.strip();
        if (stripped.isEmpty() || stripped.length() > longest) {
            throw new IllegalArgumentException(what + ": has " + stripped.length() + " characters; give 1 to " + longest);
        }
        if (stripped.codePoints().anyMatch(each -> Character.isISOControl(each) && !(lines && each == '\n')
                || Character.getType(each) == Character.SURROGATE)) {
            throw new IllegalArgumentException(what + ": has characters that cannot be shown; leave them out");
        }
        return stripped;
    }
}

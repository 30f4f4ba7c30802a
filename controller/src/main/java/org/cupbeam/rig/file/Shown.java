package org.cupbeam.rig.file;

/** Text from outside, as an error may show it: cut short, and nothing in it that a terminal or a log would act on. */
public final class Shown {
    private Shown() {
    }

    /**
     * A text for an eye. Control characters, invisible ones that turn or break a line, and halves of characters are
     * shown as their numbers.
     *
     * @param most how many characters of what is shown, at most; an ellipsis stands for the rest
     */
    public static String of(String text, int most) {
        StringBuilder shown = new StringBuilder(Math.min(text.length(), most) + 1);
        for (int at = 0; at < text.length(); ) {
            int each = text.codePointAt(at);
            String next = isHarmless(each) ? Character.toString(each) : String.format("\\u%04X", each);
            if (shown.length() + next.length() > most) {
                return shown.append('…').toString();
            }
            shown.append(next);
            at += Character.charCount(each);
        }
        return shown.toString();
    }

    private static boolean isHarmless(int each) {
        return switch (Character.getType(each)) {
            case Character.CONTROL, Character.FORMAT, Character.SURROGATE, Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR -> false;
            default -> true;
        };
    }
}

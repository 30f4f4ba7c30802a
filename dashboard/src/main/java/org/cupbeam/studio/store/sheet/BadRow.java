package org.cupbeam.studio.store.sheet;

/**
 * A row or a file that makes no sense: where, what is wrong, and what would do. It may quote the file: cut short, with a
 * mark in the place of what cannot be shown.
 */
public final class BadRow extends Exception {
    private static final long serialVersionUID = 1L;
    private static final int LONGEST = 500;

    public BadRow(String message) {
        super(shown(message));
    }

    private static String shown(String message) {
        String whole = message.replaceAll("[\\p{Cc}\\p{Cs}\\u2028\\u2029]", "\uFFFD");
        return whole.codePointCount(0, whole.length()) <= LONGEST ? whole
                : whole.substring(0, whole.offsetByCodePoints(0, LONGEST)) + "…";
    }
}

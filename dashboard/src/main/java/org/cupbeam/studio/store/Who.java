package org.cupbeam.studio.store;

/**
 * Who changes the record, and why.
 *
 * @param name   1 to 40 characters
 * @param reason null where not said
 * @param atMs   now, ms since 1970
 */
public record Who(String name, String reason, long atMs) {
    /** The longest reason, in characters. */
    public static final int LONGEST_REASON = 400;

    public Who {
        name = Texts.line("who", name, Texts.NAME);
        reason = reason == null || reason.isBlank() ? null : Texts.line("reason", reason, LONGEST_REASON);
    }
}

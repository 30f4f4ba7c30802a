package org.cupbeam.event;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Where an event comes from: a lane, and the journal it was written to. Together with the sequence it names the event
 * for good.
 *
 * @param studio  as in {@link Topics}
 * @param lane    likewise
 * @param journal the journal's id, 1–64 of a–z, 0–9 and hyphen
 */
public record Source(String studio, String lane, String journal) {
    private static final Pattern TEXT =
            Pattern.compile("/studio/([a-z0-9-]{1,32})/lane/([a-z0-9-]{1,32})/journal/([a-z0-9-]{1,64})");
    static final String RULE = "/studio/<studio>/lane/<lane>/journal/<journal> in a-z, 0-9 and hyphen";

    /** @throws IllegalArgumentException for a name that could not be read back */
    public Source {
        if (!TEXT.matcher(text(studio, lane, journal)).matches()) {
            throw new IllegalArgumentException(text(studio, lane, journal) + " is not " + RULE);
        }
    }

    /** Whether a text may be a journal's id. */
    public static boolean isJournal(String text) {
        return TEXT.matcher(text("s", "l", text)).matches();
    }

    /** Takes the text form apart; null where it is none. */
    static Source parse(String text) {
        Matcher parts = TEXT.matcher(text);
        return parts.matches() ? new Source(parts.group(1), parts.group(2), parts.group(3)) : null;
    }

    private static String text(String studio, String lane, String journal) {
        return "/studio/" + studio + "/lane/" + lane + "/journal/" + journal;
    }

    @Override
    public String toString() {
        return text(studio, lane, journal);
    }
}

package org.cupbeam.event;

import java.util.regex.Pattern;
import org.cupbeam.drill.Worded;

/**
 * The topics of one lane, {@code cupbeam/<studio>/<lane>/…}.
 *
 * @param studio the studio's name, 1–32 of a–z, 0–9 and hyphen
 * @param lane   the lane's name, likewise
 */
public record Topics(String studio, String lane) {
    private static final Pattern NAME = Pattern.compile("[a-z0-9-]{1,32}");

    /** What a studio's or lane's name may be, in words for an error. */
    public static final String NAME_RULE = "1 to 32 of a-z, 0-9 and hyphen";

    /** What a topic carries; its last level is its word. */
    public enum Kind implements Worded {
        EVENT(false), SCORE(true), HEALTH(true), COMMAND(false), ANSWER(false), STORED(true);

        private final boolean retained;

        Kind(boolean retained) {
            this.retained = retained;
        }

        /** Whether the broker keeps the last message for whoever subscribes later. */
        public boolean retained() {
            return retained;
        }
    }

    /** A topic taken apart. */
    public record Address(Topics lane, Kind kind) {
    }

    /** @throws IllegalArgumentException for a name that breaks {@link #NAME_RULE} */
    public Topics {
        if (!isName(studio) || !isName(lane)) {
            throw new IllegalArgumentException(
                    "studio \"" + studio + "\", lane \"" + lane + "\": each name has " + NAME_RULE);
        }
    }

    /** Whether a text may name a studio or a lane. */
    public static boolean isName(String text) {
        return text != null && NAME.matcher(text).matches();
    }

    public String of(Kind kind) {
        return "cupbeam/" + studio + "/" + lane + "/" + kind.word();
    }

    public String event() {
        return of(Kind.EVENT);
    }

    public String score() {
        return of(Kind.SCORE);
    }

    public String health() {
        return of(Kind.HEALTH);
    }

    public String command() {
        return of(Kind.COMMAND);
    }

    public String answer() {
        return of(Kind.ANSWER);
    }

    public String stored() {
        return of(Kind.STORED);
    }

    /** The filter that takes one kind of message of every lane of a studio. */
    public static String everyLane(String studio, Kind kind) {
        return "cupbeam/" + studio + "/+/" + kind.word();
    }

    /** Takes a topic apart; null where it is none of ours. */
    public static Address parse(String topic) {
        String[] levels = topic.split("/", -1);
        if (levels.length != 4 || !levels[0].equals("cupbeam") || !isName(levels[1]) || !isName(levels[2])) {
            return null;
        }
        Kind kind = Words.find(Kind.class, levels[3]);
        return kind == null ? null : new Address(new Topics(levels[1], levels[2]), kind);
    }
}

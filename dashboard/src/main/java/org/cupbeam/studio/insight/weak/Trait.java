package org.cupbeam.studio.insight.weak;

import java.util.Arrays;
import java.util.List;
import org.cupbeam.studio.insight.shot.Break;
import org.cupbeam.studio.insight.shot.Lie;
import org.cupbeam.studio.insight.words.Units;

/** What tells one kind of putts from another: its break, its slope, or how far it is. */
public enum Trait {
    LEFT_TO_RIGHT(Family.BREAK, Break.LEFT_TO_RIGHT.words()), RIGHT_TO_LEFT(Family.BREAK, Break.RIGHT_TO_LEFT.words()),
    STRAIGHT(Family.BREAK, Break.STRAIGHT.words()),
    UPHILL(Family.SLOPE, Lie.UPHILL.words()), DOWNHILL(Family.SLOPE, Lie.DOWNHILL.words()),
    LEVEL(Family.SLOPE, Lie.LEVEL.words()),
    SHORT(Family.DISTANCE, "short"), MIDDLE(Family.DISTANCE, "middle-distance"), LONG(Family.DISTANCE, "long");

    /** Nearer than this is short: most players hole most of these. */
    public static final double SHORT_BELOW_MM = 2000;
    /** Further than this is long: few players hole many of these. */
    public static final double LONG_FROM_MM = 4000;

    /** Traits of which a putt has one at most. */
    public enum Family { BREAK, SLOPE, DISTANCE }

    private final Family family;
    private final String words;

    Trait(Family family, String words) {
        this.family = family;
        this.words = words;
    }

    public Family family() {
        return family;
    }

    /** As before "putts" in a sentence. */
    public String words() {
        return words;
    }

    /** The same with its distance told. */
    public String words(Units units) {
        return switch (this) {
            case SHORT -> "short (under " + units.length(SHORT_BELOW_MM) + ")";
            case MIDDLE -> "middle-distance (" + units.length(SHORT_BELOW_MM) + " to " + units.length(LONG_FROM_MM) + ")";
            case LONG -> "long (over " + units.length(LONG_FROM_MM) + ")";
            default -> words;
        };
    }

    /** The others of its family. */
    public List<Trait> others() {
        return Arrays.stream(values()).filter(each -> each.family == family && each != this).toList();
    }

    /** Whether a putt of this kind has it. */
    public boolean of(double distanceMm, Break breaks, Lie lie) {
        return switch (this) {
            case LEFT_TO_RIGHT -> breaks == Break.LEFT_TO_RIGHT;
            case RIGHT_TO_LEFT -> breaks == Break.RIGHT_TO_LEFT;
            case STRAIGHT -> breaks == Break.STRAIGHT;
            case UPHILL -> lie == Lie.UPHILL;
            case DOWNHILL -> lie == Lie.DOWNHILL;
            case LEVEL -> lie == Lie.LEVEL;
            case SHORT -> distanceMm < SHORT_BELOW_MM;
            case MIDDLE -> distanceMm >= SHORT_BELOW_MM && distanceMm < LONG_FROM_MM;
            case LONG -> distanceMm >= LONG_FROM_MM;
        };
    }
}

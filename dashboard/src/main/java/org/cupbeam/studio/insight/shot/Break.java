package org.cupbeam.studio.insight.shot;

/** Which way a putt turns, seen from the ball. */
public enum Break {
    LEFT_TO_RIGHT("left-to-right"), RIGHT_TO_LEFT("right-to-left"), STRAIGHT("straight"), UNKNOWN("of unknown break");

    private final String words;

    Break(String words) {
        this.words = words;
    }

    /** As before "putts" in a sentence. */
    public String words() {
        return words;
    }
}

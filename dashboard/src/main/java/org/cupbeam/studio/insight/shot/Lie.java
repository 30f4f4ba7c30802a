package org.cupbeam.studio.insight.shot;

/** Which way a putt lies. */
public enum Lie {
    UPHILL("uphill"), DOWNHILL("downhill"), LEVEL("level"), UNKNOWN("of unknown slope");

    private final String words;

    Lie(String words) {
        this.words = words;
    }

    /** As before "putts" in a sentence. */
    public String words() {
        return words;
    }
}

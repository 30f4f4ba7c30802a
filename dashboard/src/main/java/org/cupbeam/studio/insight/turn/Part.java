package org.cupbeam.studio.insight.turn;

/** What of a player's putting a chart watches. */
public enum Part {
    /** Putts that drop, given where they are struck from and what kind they are. */
    MAKES("makes", 1.5),
    /** Putts that drop, given how wide the hole was to a ball that came so fast. */
    DIRECTION("direction", 1.5),
    /** Putts whose length is near what was meant. */
    PACE("pace", 2);

    private final String words;
    private final double oddsRatio;

    Part(String words, double oddsRatio) {
        this.words = words;
        this.oddsRatio = oddsRatio;
    }

    public String words() {
        return words;
    }

    /** By what factor the odds change in a turn worth noticing: some 10 in 100 at even chances; pace a third wider. */
    public double oddsRatio() {
        return oddsRatio;
    }
}

package org.cupbeam.lane;

/**
 * Whose attempt is next, and from where.
 *
 * @param player    null where nothing is played
 * @param stationMm distance from the hole's centre; NaN where nothing is played, below 0 while balls are rolled by hand
 */
public record UpNext(String player, double stationMm) {
    /** Nothing is played. */
    public static final UpNext NOBODY = new UpNext(null, Double.NaN);

    /** The green is tested by balls rolled by hand: nobody putts. */
    public static final UpNext ROLLS = new UpNext(null, -1);

    static UpNext on(Card card) {
        if (card.play() == null) {
            return NOBODY;
        }
        var standing = card.play().standing();
        int station = standing.over() ? 1 : standing.runs().get(standing.turn()).station();
        return new UpNext(card.play().player(), card.begun().drill().stations().atMm(station));
    }
}

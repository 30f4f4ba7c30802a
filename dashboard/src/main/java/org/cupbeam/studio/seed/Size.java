package org.cupbeam.studio.seed;

/**
 * How large a studio, for a year.
 *
 * @param lanes    1 to 26
 * @param regulars who come twice a week or so; what is planted is planted in them
 * @param casuals  who come twice a month
 * @param guests   who come a few times
 */
public record Size(int lanes, int regulars, int casuals, int guests) {
    /** Three lanes, 62 players, some 80,000 attempts. */
    public static final Size STUDIO = new Size(3, 12, 20, 30);
    private static final double STUDIOS_ATTEMPTS = 80_000;

    public Size {
        if (lanes < 1 || lanes > 26 || regulars < 0 || casuals < 0 || guests < 0) {
            throw new IllegalArgumentException("a studio has 1 to 26 lanes, and no fewer than 0 players of a kind");
        }
    }

    /** A studio with about so many attempts in a year, as busy as need be. */
    public static Size ofAttempts(int attempts) {
        double times = attempts / STUDIOS_ATTEMPTS;
        return new Size((int) Math.min(26, Math.max(1, Math.round(1 + 2 * Math.sqrt(times)))),
                (int) Math.round(STUDIO.regulars * times), (int) Math.round(STUDIO.casuals * times),
                (int) Math.round(STUDIO.guests * times));
    }
}

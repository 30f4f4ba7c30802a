package org.cupbeam.drill;

import java.util.OptionalDouble;

/**
 * A drill: where to putt from, with how many balls, what clears a station, and what an overshoot costs.
 *
 * @param name    1 to {@link #NAME_MAX} characters, for people
 * @param balls   to start a visit or a run with, as the supply says; 1 to {@link #BALLS_MAX}
 * @param holed   balls holed in one visit that clear a station; 1 to {@code balls}
 * @param limitMm beyond which a miss overshoots, 0 or more; none where the rig's own limit holds
 * @param turns   of players in a duel
 */
public record Drill(String name, Stations stations, int balls, Supply supply, int holed, OptionalDouble limitMm,
                    Penalty penalty, Turns turns) {
    /** The longest name. */
    public static final int NAME_MAX = 80;
    /** The most balls. */
    public static final int BALLS_MAX = 100;
    /** The furthest limit in mm. */
    public static final double LIMIT_MAX_MM = 10_000;

    public Drill {
        require(isName(name), "a drill's name has 1 to " + NAME_MAX + " characters, on one line");
        require(balls >= 1 && balls <= BALLS_MAX, "a drill has 1 to " + BALLS_MAX + " balls, not " + balls);
        require(holed >= 1 && holed <= balls, "a station is cleared by 1 to " + balls + " balls holed, not " + holed);
        double limit = limitMm.orElse(0);
        require(limit >= 0 && limit <= LIMIT_MAX_MM,
                "an overshoot's limit is 0 to " + LIMIT_MAX_MM + " mm past the hole, not " + limit);
    }

    /** The limit that holds on a lane: the drill's own, else the rig's. */
    public double limitMm(double rigLimitMm) {
        return limitMm.orElse(rigLimitMm);
    }

    /** Whether a drill could be called so: shown on one line, and written in UTF-8. */
    static boolean isName(String name) {
        return !name.isBlank() && name.length() <= NAME_MAX && name.codePoints()
                .noneMatch(each -> Character.isISOControl(each) || Character.getType(each) == Character.SURROGATE);
    }

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new IllegalArgumentException(otherwise);
        }
    }
}

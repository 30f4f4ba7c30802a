package org.cupbeam.studio.seed;

import java.time.ZoneId;
import java.util.List;
import org.cupbeam.studio.usage.OpeningHours;

/** The made-up studio. */
public final class Scenario {
    /** Its name on the wire. */
    public static final String STUDIO = "orchard";
    /** Who gives lessons there, and corrects the record. */
    public static final String COACH = "Coach Ines";
    /** Where its clock hangs. */
    public static final ZoneId ZONE = ZoneId.of("Europe/Berlin");
    public static final OpeningHours HOURS = OpeningHours.parse("tue-fri 11:00-22:00; sat 10:00-20:00; sun 10:00-18:00");
    private static final List<String> LANES = List.of("north", "window", "stairs");

    private Scenario() {
    }

    /** A lane's name on the wire; the first is 0. */
    public static String lane(int number) {
        return number < LANES.size() ? LANES.get(number) : "lane-" + (number + 1);
    }
}

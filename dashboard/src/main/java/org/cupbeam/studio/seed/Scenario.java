package org.cupbeam.studio.seed;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.event.Tags;
import org.cupbeam.studio.league.Weeks;
import org.cupbeam.studio.store.league.League;
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

    /** Six weeks of the ladder, of which three are over. */
    static League league(Instant now) {
        return new League("Ladder of the dark weeks", DrillFile.preset("ladder"), Tags.NONE, ZONE,
                Weeks.monday(LocalDate.ofInstant(now, ZONE)).minusWeeks(3), 6, 1, Set.of());
    }

    /** A lane's name on the wire; the first is 0. */
    public static String lane(int number) {
        return number < LANES.size() ? LANES.get(number) : "lane-" + (number + 1);
    }
}

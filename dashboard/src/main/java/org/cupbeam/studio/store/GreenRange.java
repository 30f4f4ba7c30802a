package org.cupbeam.studio.store;

import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.cupbeam.event.Topics;
import org.jdbi.v3.core.Handle;

/** Between which speeds, in ft, the staff want a lane's green to be. */
public record GreenRange(double lowFt, double highFt) {
    private static final String PREFIX = "green-range:";
    private static final double SLOWEST_FT = 3;
    private static final double FASTEST_FT = 20;

    /** @throws IllegalArgumentException for one that no green is in, with what would do */
    public GreenRange {
        if (!(lowFt >= SLOWEST_FT && lowFt < highFt && highFt <= FASTEST_FT)) {
            throw new IllegalArgumentException("a green's range goes from a lower to a higher speed, both from "
                    + SLOWEST_FT + " to " + FASTEST_FT + " ft; this is " + lowFt + " to " + highFt);
        }
    }

    public static Optional<GreenRange> of(Handle h, Topics lane) {
        return Settings.get(h, name(lane)).map(GreenRange::parse);
    }

    /** All that are set. */
    public static Map<Topics, GreenRange> all(Handle h) {
        return Settings.startingWith(h, PREFIX).entrySet().stream().collect(Collectors.toMap(
                each -> topics(each.getKey()), each -> parse(each.getValue())));
    }

    public void set(Handle h, Topics lane, long nowMs) {
        Settings.set(h, name(lane), lowFt + " " + highFt, nowMs);
    }

    public static void clear(Handle h, Topics lane) {
        Settings.clear(h, name(lane));
    }

    private static String name(Topics lane) {
        return PREFIX + lane.studio() + "/" + lane.lane();
    }

    private static Topics topics(String name) {
        String[] parts = name.split("/", 2);
        return new Topics(parts[0], parts[1]);
    }

    private static GreenRange parse(String text) {
        String[] parts = text.split(" ", 2);
        return new GreenRange(Double.parseDouble(parts[0]), Double.parseDouble(parts[1]));
    }
}

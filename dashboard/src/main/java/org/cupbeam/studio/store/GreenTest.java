package org.cupbeam.studio.store;

import java.util.Optional;
import org.cupbeam.event.Topics;
import org.jdbi.v3.core.Handle;

/**
 * The last test of a green by balls rolled both ways, as somebody kept it.
 *
 * @param atMs          when it was kept, ms since 1970
 * @param stimpFt       the speed as on the level; the interval that holds it 95 times in 100 goes from low to high
 * @param uphillPercent the line's slope toward the hole, as both ways have it
 * @param balls         that counted, of both ways
 * @param by            who kept it
 */
public record GreenTest(long atMs, double stimpFt, double lowFt, double highFt, double uphillPercent, int balls, String by) {
    private static final String PREFIX = "green-test:";
    private static final int PARTS = 7;

    public static Optional<GreenTest> last(Handle h, Topics lane) {
        return Settings.get(h, name(lane)).map(GreenTest::parse);
    }

    /** Keeps it in place of the one before. */
    public void keep(Handle h, Topics lane) {
        Settings.set(h, name(lane), String.join(" ", Long.toString(atMs), Double.toString(stimpFt), Double.toString(lowFt),
                Double.toString(highFt), Double.toString(uphillPercent), Integer.toString(balls), by), atMs);
    }

    private static String name(Topics lane) {
        return PREFIX + lane.studio() + "/" + lane.lane();
    }

    private static GreenTest parse(String text) {
        String[] parts = text.split(" ", PARTS);
        return new GreenTest(Long.parseLong(parts[0]), Double.parseDouble(parts[1]), Double.parseDouble(parts[2]),
                Double.parseDouble(parts[3]), Double.parseDouble(parts[4]), Integer.parseInt(parts[5]), parts[6]);
    }
}

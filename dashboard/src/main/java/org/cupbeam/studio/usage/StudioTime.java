package org.cupbeam.studio.usage;

import java.time.DateTimeException;
import java.time.ZoneId;
import org.cupbeam.studio.store.Settings;
import org.jdbi.v3.core.Handle;

/** The studio's clock and its opening hours, as they are set. */
public record StudioTime(ZoneId zone, OpeningHours hours) {
    private static final String ZONE = "time-zone";
    private static final String HOURS = "opening-hours";

    /**
     * What is set; where nothing is, the usual hours.
     *
     * @param elsewhere the zone where none is set: the machine's
     */
    public static StudioTime of(Handle h, ZoneId elsewhere) {
        return new StudioTime(Settings.get(h, ZONE).map(StudioTime::zone).orElse(elsewhere),
                Settings.get(h, HOURS).map(OpeningHours::parse).orElse(OpeningHours.USUAL));
    }

    /** @throws IllegalArgumentException for a zone that is none, with what would do */
    public static ZoneId zone(String name) {
        try {
            return ZoneId.of(name);
        } catch (DateTimeException e) {
            throw new IllegalArgumentException("time zone \"" + name + "\" is not known; give one as Europe/Berlin", e);
        }
    }

    /** Sets both. */
    public void set(Handle h, long nowMs) {
        Settings.set(h, ZONE, zone.getId(), nowMs);
        Settings.set(h, HOURS, hours.text(), nowMs);
    }
}

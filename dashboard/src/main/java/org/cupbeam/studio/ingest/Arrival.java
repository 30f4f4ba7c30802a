package org.cupbeam.studio.ingest;

import java.time.Instant;
import org.cupbeam.event.Event;
import org.cupbeam.event.Source;

/**
 * An event that came and is to be kept.
 *
 * @param source   where it is from
 * @param sequence its number there, from 1
 * @param time     the wall clock that it carries
 * @param event    what it says; null where that cannot be understood
 * @param problem  why not; null where it can
 * @param payload  the event as it came
 * @param received when it came, by the host's clock
 */
public record Arrival(Source source, long sequence, Instant time, Event event, String problem, byte[] payload,
                      Instant received) {
    /** The same, to be kept without being understood. */
    Arrival onlyKept(String why) {
        return new Arrival(source, sequence, time, null, why, payload, received);
    }
}

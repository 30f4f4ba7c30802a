package org.cupbeam.studio.ingest;

import java.time.Instant;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.Data;
import org.cupbeam.event.Event;
import org.cupbeam.event.EventJson;
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
    /**
     * Reads an event. One that says who it is, but not in words that are understood, is one too.
     *
     * @throws BadMessage for what does not even say who it is
     */
    public static Arrival read(byte[] payload, Instant received) throws BadMessage {
        try {
            Event event = EventJson.decode(payload);
            if (event.data() instanceof Data.Other other) {
                return new Arrival(event.source(), event.sequence(), event.time(), null, "type: is " + other.type()
                        + ", which this version does not know; kept for one that does", payload, received);
            }
            return new Arrival(event.source(), event.sequence(), event.time(), event, null, payload, received);
        } catch (BadMessage why) {
            EventJson.Envelope is = EventJson.envelope(payload);
            return new Arrival(is.source(), is.sequence(), is.time(), null, why.getMessage(), payload, received);
        }
    }

    /** The same, to be kept without being understood. */
    public Arrival onlyKept(String why) {
        return new Arrival(source, sequence, time, null, why, payload, received);
    }
}

package org.cupbeam.studio.ingest;

import java.time.Clock;
import java.util.Optional;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.Source;
import org.cupbeam.event.Topics;

/**
 * Reads messages of event topics. An event that says who it is, but not in words that are understood, is kept all the
 * same: otherwise its lane would send it for ever, and nothing after it would get in. That is how a newer lane speaks to an
 * older host: what the host does not know yet it reads again once it is newer ({@link EventLog#readAgain}).
 */
final class EventReader {
    private final Clock wall;

    EventReader(Clock wall) {
        this.wall = wall;
    }

    Arrival read(Message message) throws Refused {
        if (message.tooLarge()) {
            throw new Refused("payload: " + message.length() + " bytes; at most " + Message.LIMIT_BYTES + " are read");
        }
        Arrival arrival = parsed(message.payload());
        Source source = arrival.source();
        Optional<Topics> lane = Optional.ofNullable(Topics.parse(message.topic())).map(Topics.Address::lane);
        if (!lane.equals(Optional.of(new Topics(source.studio(), source.lane())))) {
            throw new Refused("source: is " + source + "; publish it under that lane's own topic");
        }
        if (arrival.sequence() == 0) {
            throw new Refused("id: is 0; number events from 1");
        }
        return arrival;
    }

    private Arrival parsed(byte[] payload) throws Refused {
        try {
            return Arrival.read(payload, wall.instant());
        } catch (BadMessage e) {
            throw new Refused(e.getMessage());
        }
    }
}

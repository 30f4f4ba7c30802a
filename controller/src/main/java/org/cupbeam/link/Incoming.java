package org.cupbeam.link;

import java.util.function.Predicate;
import org.cupbeam.event.Answer;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.Command;
import org.cupbeam.event.CommandJson;
import org.cupbeam.event.Complaints;
import org.cupbeam.event.Health;
import org.cupbeam.event.HealthJson;
import org.cupbeam.event.Stored;
import org.cupbeam.event.StoredJson;
import org.cupbeam.event.Topics;
import org.cupbeam.journal.JournalException;
import org.cupbeam.journal.Outbox;
import org.cupbeam.rig.file.Shown;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What is heard: commands for the lane, and how far the host has stored. Whatever makes no sense ends here. */
final class Incoming {
    private static final Logger LOG = LoggerFactory.getLogger(Incoming.class);
    /** An answer takes one character more, which the ellipsis may need. */
    private static final int REASON_MAX = 399;

    private final Topics topics;
    private final Outbox outbox;
    private final Predicate<Command> lane;
    private final Post post;
    private final Complaints complaints = new Complaints(System::nanoTime, LOG::warn);
    private long refused;

    Incoming(Topics topics, Outbox outbox, Predicate<Command> lane, Post post) {
        this.topics = topics;
        this.outbox = outbox;
        this.lane = lane;
        this.post = post;
    }

    /** How many messages made no sense. */
    long refused() {
        return refused;
    }

    void message(Wire.Message message) {
        try {
            if (message.topic().equals(topics.command())) {
                command(message);
            } else if (message.topic().equals(topics.stored())) {
                stored(StoredJson.decode(message.payload()));
            } else if (message.topic().equals(topics.health())) {
                health(HealthJson.decode(message.payload()));
            }
        } catch (BadMessage e) {
            refuse(message, e);
        }
    }

    private void command(Wire.Message message) throws BadMessage {
        if (message.retained()) {
            refused++;
            complaints.about(message.topic(), "a retained command is not obeyed; publish commands unretained");
            return;
        }
        Command command = CommandJson.decode(message.payload());
        if (!lane.test(command)) {
            post.answer(new Answer(command.id(), false, "the lane has more to do than it can; ask again in a second",
                    outbox.last()));
        }
    }

    private void stored(Stored stored) {
        if (!stored.journal().equals(outbox.id())) {
            storedBefore(stored);
            return;
        }
        if (!outbox.stored(stored.sequence())) {
            refused++;
            complaints.about(topics.stored(), "the host says it stored up to " + stored.sequence()
                    + ", but there is nothing after " + outbox.last());
        }
    }

    /** About a journal that this lane had before. */
    private void storedBefore(Stored stored) {
        try {
            outbox.storedOf(stored.journal(), stored.sequence());
        } catch (JournalException e) {
            LOG.warn("{}; it is sent again", e.getMessage());
        }
    }

    /** A last will that comes late would be kept by the broker, and tell whoever comes next that we are gone. */
    private void health(Health health) {
        if (health.state() == Health.State.LOST) {
            post.sayHealthAgain();
        }
    }

    private void refuse(Wire.Message message, BadMessage e) {
        refused++;
        complaints.about(message.topic(), e.getMessage());
        if (e.id() != null) {
            post.answer(new Answer(e.id(), false, Shown.of(e.getMessage(), REASON_MAX), outbox.last()));
        }
    }
}

package org.cupbeam.lane;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.edge.EdgeSource;
import org.cupbeam.event.Answer;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.Command;
import org.cupbeam.event.Event;
import org.cupbeam.event.EventJson;
import org.cupbeam.event.Health;
import org.cupbeam.event.Score;
import org.cupbeam.event.Topics;
import org.cupbeam.journal.Journal;
import org.cupbeam.journal.JournalException;
import org.cupbeam.journal.Outbox;
import org.cupbeam.rig.Rig;

/** The lane's own loop, scribe and journal, without their threads: whoever holds it takes their steps. */
public final class LaneByHand implements AutoCloseable {
    /** Where the lane's word goes. */
    public interface Heard {
        void written();

        void score(Score score);

        void health(Health.Report report);

        void answer(Answer answer);
    }

    private final Journal<Told> journal;
    private final LaneAgent agent;

    public LaneByHand(Topics topics, Rig rig, Path file, Surroundings around, Heard heard, Runnable wake)
            throws JournalException {
        journal = Journal.open(file, topics.studio(), topics.lane(), new ToldCodec(), around.wall().instant());
        agent = new LaneAgent(LaneSettings.of(topics, rig, file), journal, around, new Passing(heard), wake);
    }

    public void begin() {
        agent.begin(new Silent());
    }

    public Outbox outbox() {
        return journal;
    }

    /** Where a damaged journal was moved to. */
    public Optional<Path> movedAside() {
        return journal.movedAside();
    }

    /** One step of the lane's thread. */
    public int loop() {
        return agent.doWork();
    }

    public long idleNs() {
        return agent.idleNs();
    }

    /** One step of the journal's thread. */
    public int scribe() {
        return agent.scribe().doWork();
    }

    public void edge(int channel, boolean active, long timeNs) {
        agent.edges().edge(channel, active, timeNs);
    }

    public boolean hear(Command command) {
        return agent.hear(command);
    }

    /** Whether the journal holds that a command was accepted. */
    public boolean accepted(String command) {
        try {
            return journal.answer(command).filter(Answer::accepted).isPresent();
        } catch (JournalException e) {
            throw new AssertionError(e);
        }
    }

    /** All that the journal holds. */
    public List<Event> events() {
        try {
            List<Event> events = new ArrayList<>();
            for (Outbox.Row row : journal.after(0, 100_000)) {
                events.add(EventJson.decode(row.payload()));
            }
            return events;
        } catch (JournalException | BadMessage e) {
            throw new AssertionError(e);
        }
    }

    /** Lets go of the journal's file. */
    @Override
    public void close() {
        try {
            journal.close();
        } catch (JournalException e) {
            throw new AssertionError(e);
        }
    }

    private record Passing(Heard heard) implements Outlet {
        @Override
        public void written() {
            heard.written();
        }

        @Override
        public void score(Score score) {
            heard.score(score);
        }

        @Override
        public void health(Health.Report report) {
            heard.health(report);
        }

        @Override
        public void answer(Answer answer) {
            heard.answer(answer);
        }
    }

    private static final class Silent implements EdgeSource {
        @Override
        public void start(EdgeSink sink) {
        }

        @Override
        public void close() {
        }
    }
}

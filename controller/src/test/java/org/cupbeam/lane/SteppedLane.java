package org.cupbeam.lane;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.concurrent.TimeUnit;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.Penalty;
import org.cupbeam.drill.Stations;
import org.cupbeam.drill.Supply;
import org.cupbeam.drill.Turns;
import org.cupbeam.edge.ChannelHealth;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.edge.EdgeSource;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.Command;
import org.cupbeam.event.Event;
import org.cupbeam.event.EventJson;
import org.cupbeam.event.Tags;
import org.cupbeam.event.Topics;
import org.cupbeam.journal.Journal;
import org.cupbeam.journal.JournalException;
import org.cupbeam.journal.Outbox;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.RigFile;
import org.cupbeam.rig.file.BadFileException;

/** A lane with a cup, a beam past it and a pedal, whose clocks stand still unless moved, and that is stepped by hand. */
final class SteppedLane implements AutoCloseable {
    static final Topics TOPICS = new Topics("north", "bay-3");
    static final int CUP = 0;
    static final int PEDAL = 1;
    static final int BEAM = 2;
    static final Tags TAGS = new Tags(Tags.Break.LEFT_TO_RIGHT, Tags.Slope.UPHILL);
    private static final long STEP_NS = 10_000_000;

    final List<Lamp.State> lamp = new ArrayList<>();
    private final Path file;
    FakeOutlet outlet;
    Journal<Told> journal;
    LaneAgent agent;
    long nowNs = 1_000_000_000_000L;
    Instant wall = Instant.parse("2026-11-25T06:00:00Z");
    boolean synchronised = true;
    String boot = "boot-1";
    Command.Start start;
    List<ChannelHealth> wires = List.of();
    Rig fitted = rig();
    private int commands;

    SteppedLane(Path file) {
        this.file = file;
    }

    static Rig rig() {
        try {
            return RigFile.parse("rig.toml", """
                    [green]
                    stimp_ft = 10
                    uphill_percent = 0
                    [overshoot]
                    limit_mm = 914.4
                    [cup]
                    gpio = 17
                    [pedal]
                    gpio = 27
                    [[beam]]
                    name = "past"
                    gpio = 5
                    position_mm = 914.4
                    height_mm = 21
                    """);
        } catch (BadFileException e) {
            throw new AssertionError(e);
        }
    }

    static Drill ladder(int stations, int balls) {
        return new Drill("Ladder", new Stations.Ladder(1000, 500, stations), balls, Supply.EVERY_STATION, 1,
                OptionalDouble.empty(), Penalty.NONE, Turns.STATION);
    }

    /** Switches it on. */
    SteppedLane open() {
        try {
            outlet = new FakeOutlet();
            journal = Journal.open(file, TOPICS.studio(), TOPICS.lane(), new ToldCodec(), wall);
            Surroundings around = new Surroundings(() -> nowNs, 1, () -> wall, () -> synchronised, boot, "test");
            agent = new LaneAgent(LaneSettings.of(TOPICS, fitted, file).with(lamp::add), journal, around, outlet,
                    () -> { });
            if (start != null) {
                agent.play(start);
            }
            agent.begin(new EdgeSource() {
                @Override
                public void start(EdgeSink sink) {
                }

                @Override
                public List<ChannelHealth> health() {
                    return wires;
                }

                @Override
                public void close() {
                }
            });
            return this;
        } catch (JournalException e) {
            throw new AssertionError(e);
        }
    }

    /** Takes its power, with whatever was not on the disk, and gives it back. */
    SteppedLane crash() {
        close();
        return open();
    }

    /** Time passes, and it does what there is to do, but for the disk. */
    SteppedLane passWithoutDisk(long ms) {
        for (long untilNs = nowNs + TimeUnit.MILLISECONDS.toNanos(ms); nowNs < untilNs; nowNs += STEP_NS) {
            agent.doWork();
        }
        return this;
    }

    SteppedLane pass(long ms) {
        passWithoutDisk(ms);
        return sync();
    }

    /** The disk takes what waits for it. */
    SteppedLane sync() {
        while (agent.scribe().doWork() > 0) {
            agent.doWork();
        }
        return this;
    }

    void edge(int channel, boolean active) {
        agent.edges().edge(channel, active, nowNs);
    }

    /** A channel is active for so long. */
    SteppedLane pulse(int channel, long ms) {
        edge(channel, true);
        passWithoutDisk(ms);
        edge(channel, false);
        return passWithoutDisk(10);
    }

    /** A ball drops, and its putt is resolved. */
    SteppedLane hole() {
        return pulse(CUP, 20).passWithoutDisk(700);
    }

    /** Somebody's foot says that a ball missed short. */
    SteppedLane miss() {
        return pulse(PEDAL, 100).passWithoutDisk(700);
    }

    SteppedLane takeBack() {
        return pulse(PEDAL, 100).passWithoutDisk(100).pulse(PEDAL, 100).passWithoutDisk(700);
    }

    SteppedLane pressLong() {
        return pulse(PEDAL, 1000).passWithoutDisk(100);
    }

    SteppedLane ask(Command.Ask ask) {
        return ask("c-" + ++commands, OptionalLong.empty(), ask);
    }

    SteppedLane ask(String id, OptionalLong expect, Command.Ask ask) {
        agent.hear(new Command(id, "Jo", expect, ask));
        agent.doWork();
        return this;
    }

    SteppedLane start(Drill drill, String... players) {
        return ask(new Command.Start(drill, List.of(players), TAGS));
    }

    /** What is on the disk. */
    List<Event> events() {
        try {
            List<Event> events = new ArrayList<>();
            for (Outbox.Row row : journal.after(0, 10_000)) {
                events.add(EventJson.decode(row.payload()));
            }
            return events;
        } catch (JournalException | BadMessage e) {
            throw new AssertionError(e);
        }
    }

    @Override
    public void close() {
        try {
            journal.close();
        } catch (JournalException e) {
            throw new AssertionError(e);
        }
    }
}

package org.cupbeam.studio.sim;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.cupbeam.event.Score;
import org.cupbeam.event.ScoreJson;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.ingest.EventLog;
import org.cupbeam.studio.store.Store;

/** A studio of one or two lanes, a broker and a host, from the first putt to the time when all has settled. */
final class Simulation implements AutoCloseable {
    private static final long LONGEST_NS = 3 * LaneClock.HOUR_NS;
    private static final long SETTLED_WITHIN_NS = 300 * Agenda.S;

    /** What is broken on purpose, to see that it is found. */
    record Sabotage(Function<Path, Disk> lanesDisk, Function<Store, UnaryOperator<EventLog>> host) {
        static final Sabotage NONE = new Sabotage(Disk::new, store -> log -> log);
    }

    final Agenda agenda = new Agenda();
    final Weather weather;
    private final Path folder;
    private final Broker broker;
    final HostMachine host;
    final List<LaneMachine> lanes = new ArrayList<>();
    private final List<Golfer> golfers = new ArrayList<>();
    private final Faults faults;

    Simulation(long seed, Path parent, Sabotage sabotage) {
        this(seed, parent, sabotage, Weather::of);
    }

    Simulation(long seed, Path parent, Sabotage sabotage, Function<Dice, Weather> weathers) {
        Dice dice = new Dice(seed);
        weather = weathers.apply(dice.others());
        try {
            folder = Files.createTempDirectory(parent, "sim-" + seed + "-");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        broker = new Broker(dice.others(), weather.broker());
        Network network = new Network(agenda, dice.others(), weather.slownessNs());
        host = new HostMachine(agenda, dice.others(), new Disk(Templates.store(folder.resolve("studio.db"))), network,
                broker, sabotage.host());
        for (int i = 1; i <= (dice.chance(0.3) ? 2 : 1); i++) {
            Path journal = Templates.journal(folder.resolve("lane-" + i + ".db"), dice.hex(32));
            LaneMachine lane = new LaneMachine(new Topics("north", "bay-" + i), agenda, dice.others(),
                    sabotage.lanesDisk().apply(journal), network, broker);
            lane.has(weather.slowDiskNs(), weather.clockUntilNs());
            lanes.add(lane);
            golfers.add(new Golfer(agenda, dice.others(), lane, host, dice.between(5, 25)));
        }
        faults = new Faults(agenda, dice.others(), broker, network, host, lanes);
    }

    /** Plays it, and holds what came of it to the truth; an AssertionError says what does not hold. */
    void run() {
        host.switchOn(true);
        lanes.forEach(lane -> lane.switchOn(true));
        faults.begin(weather);
        golfers.forEach(Golfer::begin);
        if (!agenda.runUntil(() -> golfers.stream().allMatch(Golfer::isDone), LONGEST_NS)) {
            throw new AssertionError("there is no end to it");
        }
        faults.stop();
        agenda.runUntil(() -> false, 5 * Agenda.S); // for what is still on its way to the lane's disk
        if (!agenda.runUntil(this::settled, SETTLED_WITHIN_NS)) {
            throw new AssertionError("it does not settle: " + lanes.stream().map(lane -> lane.name + " on "
                    + lane.isOn() + ", all stored " + lane.allStored() + ", lane's score "
                    + lane.score().sequence() + ", host's "
                    + host.shown(lane.topics).map(score -> Long.toString(score.sequence())).orElse("none")).toList());
        }
        for (int i = 0; i < lanes.size(); i++) {
            new Verdict(lanes.get(i), host, golfers.get(i).truth()).hold();
        }
    }

    private boolean settled() {
        return host.isOn() && lanes.stream().allMatch(lane -> lane.allStored() && !lane.clock.isNewlyBelieved()
                && host.shown(lane.topics).filter(shown -> same(shown, lane.score())).isPresent());
    }

    private static boolean same(Score one, Score other) {
        return Arrays.equals(ScoreJson.encode(one), ScoreJson.encode(other));
    }

    @Override
    public void close() {
        host.close();
        lanes.forEach(Machine::close);
        try (Stream<Path> left = Files.walk(folder)) {
            for (Path each : left.sorted((a, b) -> b.compareTo(a)).toList()) {
                Files.delete(each);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

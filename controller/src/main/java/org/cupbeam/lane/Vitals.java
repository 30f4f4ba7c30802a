package org.cupbeam.lane;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cupbeam.edge.ChannelHealth;
import org.cupbeam.edge.EdgeSource;
import org.cupbeam.event.Health;
import org.cupbeam.event.Stamp;
import org.cupbeam.journal.JournalException;
import org.cupbeam.journal.Outbox;

/**
 * How the lane is: said every few seconds, at once when something goes wrong or is well again, and soon after an edge, so
 * that whoever tries the sensors sees what they do.
 */
final class Vitals {
    /** So many times sooner after an edge, and no oftener than that however many come. */
    private static final int SOONER = 5;
    private static final int FAULTS_MAX = 50;
    private static final int FAULT_MAX = 400;

    private final long everyNs;
    private final String version;
    private final Outbox outbox;
    private final Optional<Path> movedAside;
    private final Sensors sensors;
    private final EdgeQueue queue;
    private final Scribe scribe;
    private final Game game;
    private final RollTrial rolls;
    private final Wall wall;
    private final Outlet outlet;
    private EdgeSource source;
    private List<String> faults = List.of();
    private Stamp.Clock clock;
    private long saidNs;
    private boolean stumbled;
    private long saidEdges;
    private int saidRolls;

    /** @param everyNs how often it is said at least, on the edges' clock */
    Vitals(long everyNs, String version, Outbox outbox, Optional<Path> movedAside, Sensors sensors, EdgeQueue queue,
           Scribe scribe, Game game, RollTrial rolls, Wall wall, Outlet outlet) {
        this.everyNs = everyNs;
        this.version = version;
        this.outbox = outbox;
        this.movedAside = movedAside;
        this.sensors = sensors;
        this.queue = queue;
        this.scribe = scribe;
        this.game = game;
        this.rolls = rolls;
        this.wall = wall;
        this.outlet = outlet;
    }

    /** Edges come from here from now on. */
    void source(EdgeSource edges) {
        source = edges;
    }

    /** A step of the lane's failed, which only a fault of the program's own can bring about. */
    void stumbled() {
        stumbled = true;
    }

    /** Whether something needs somebody. */
    boolean anyFault() {
        return !faults.isEmpty();
    }

    void look(long nowNs) {
        List<ChannelHealth> wires = source == null ? List.of() : source.health();
        List<String> found = faults(wires);
        boolean changed = !found.equals(faults) || wall.clock() != clock || rolls.changes() != saidRolls;
        long dueNs = sensors.edges() == saidEdges ? everyNs : everyNs / SOONER;
        if (changed || nowNs - saidNs >= dueNs) {
            faults = found;
            clock = wall.clock();
            saidNs = nowNs;
            saidEdges = sensors.edges();
            saidRolls = rolls.changes();
            outlet.health(report(wires, nowNs));
        }
    }

    private Health.Report report(List<ChannelHealth> wires, long nowNs) {
        long dropped = queue.dropped() + wires.stream().mapToLong(ChannelHealth::dropped).sum();
        return new Health.Report(outbox.id(), version, wall.now(), wall.clock(), outbox.last() - outbox.stored(),
                dropped, sensors.report(nowNs), faults, rolls.report(), sensors.unknown());
    }

    private List<String> faults(List<ChannelHealth> wires) {
        List<String> found = new ArrayList<>();
        JournalException failing = scribe.fault();
        if (failing != null) {
            found.add("nothing can be written down, and what happens waits: " + failing.getMessage());
        }
        if (game.lost() > 0) {
            found.add("attempts were lost while the disk failed: " + game.lost());
        }
        if (stumbled || scribe.dropped() > 0) {
            found.add("the program has a fault of its own, and something may be missing: please report what its log says");
        }
        movedAside.ifPresent(aside -> found.add("the journal was damaged, and a new one begun; the old one is " + aside));
        if (queue.dropped() > 0) {
            found.add("edges came faster than they could be taken since the start: look for a loose cable");
        }
        found.addAll(sensors.faults(wires));
        return found.stream().limit(FAULTS_MAX)
                .map(each -> each.length() <= FAULT_MAX ? each : each.substring(0, FAULT_MAX - 1) + "…").toList();
    }
}

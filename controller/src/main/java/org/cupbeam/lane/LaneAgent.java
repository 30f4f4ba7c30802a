package org.cupbeam.lane;

import org.cupbeam.drill.Drill;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.edge.EdgeSource;
import org.cupbeam.event.Command;
import org.cupbeam.event.DrillJson;
import org.cupbeam.journal.Journal;
import org.cupbeam.journal.JournalException;
import org.cupbeam.track.Attempt;
import org.cupbeam.track.TrackSink;
import org.cupbeam.track.Tracker;

/**
 * The lane's loop: the one thread that owns its state. It takes edges, then what time alone settles, then commands, and
 * never waits for a disk or a network. One step is {@link #doWork}, which a test takes by hand.
 */
final class LaneAgent {
    static final int EDGES = 1 << 12;
    private static final long TICK_NS = 250_000_000;
    private static final long HEALTH_NS = 5_000_000_000L;
    /** How soon the source is asked again that does not know yet that time is settled. */
    private static final long ASK_AGAIN_NS = 1_000_000;
    private static final EdgeSource NO_SOURCE = new EdgeSource() {
        @Override
        public void start(EdgeSink sink) {
        }

        @Override
        public void close() {
        }
    };
    private static final int COMMANDS_AT_ONCE = 16;

    private final Wall wall;
    private final Scribe scribe;
    private final EdgeQueue edges;
    private final EdgeSink taker = this::edge;
    private final Tracker tracker;
    private final Sensors sensors;
    private final RollTrial rolls;
    private final Game game;
    private final Desk desk;
    private final Clerk clerk;
    private final Vitals vitals;
    private final LampDriver lamp;
    private final Outlet outlet;
    private final double paceOfTicks;
    private volatile UpNext upNext;
    private volatile EdgeSource source = NO_SOURCE;
    private long tickNs;

    /**
     * The lane as the journal left it.
     *
     * @param wake tells whoever steps it that there is something to do
     */
    LaneAgent(LaneSettings settings, Journal<Told> journal, Surroundings around, Outlet outlet, Runnable wake)
            throws JournalException {
        this.outlet = outlet;
        wall = new Wall(around);
        scribe = new Scribe(journal, around.nanoTime(), outlet);
        edges = new EdgeQueue(EDGES, wake);
        tracker = new Tracker(settings.rig(), new Resolved());
        sensors = new Sensors(settings.rig(), tracker, wall.nowNs());
        rolls = new RollTrial(settings.rig(), wall::nowNs);
        Minutes minutes = new Minutes(journal.id());
        boolean clockOwed = journal.state(Game.CLOCK_OWED).filter(wall.boot()::equals).isPresent();
        game = new Game(Card.of(journal.inputs()), settings.rig(), tracker, scribe, minutes,
                new ScoreSheet(settings.topics(), minutes, settings.rig()), wall, clockOwed);
        desk = new Desk(journal, outlet, wake);
        clerk = new Clerk(game, scribe, outlet, rolls);
        paceOfTicks = Math.max(1, around.pace());
        vitals = new Vitals(Math.round(HEALTH_NS * paceOfTicks), around.version(), journal, journal.movedAside(), sensors,
                edges, scribe, game, rolls, wall, outlet);
        lamp = new LampDriver(settings.lamp());
        upNext = UpNext.on(game.card());
    }

    /** Says how the lane is and what is played on it; edges come from the source from now on. */
    void begin(EdgeSource edgesFrom) {
        source = edgesFrom;
        vitals.source(edgesFrom);
        tracker.begin(wall.nowNs());
        outlet.score(game.score());
        tick(wall.nowNs());
    }

    /** A drill that is to be played: goes on where it is being played already. */
    void play(Command.Start start) {
        Told.Begun on = game.card().begun();
        if (on == null || !same(on.drill(), start.drill()) || !on.players().equals(start.players())) {
            game.begin(start, null);
            upNext = UpNext.on(game.card());
        }
    }

    /** By their text: a record's own comparison takes a start several milliseconds when it is used for the first time. */
    private static boolean same(Drill one, Drill other) {
        return DrillJson.text(one).equals(DrillJson.text(other));
    }

    /** Where edges go in; one thread at a time. */
    EdgeSink edges() {
        return edges;
    }

    /** Where commands go in, on the link's thread; false, and not taken, while too many wait. */
    boolean hear(Command command) {
        return desk.hear(command);
    }

    Scribe scribe() {
        return scribe;
    }

    Card card() {
        return game.card();
    }

    /** Any thread. */
    UpNext upNext() {
        return upNext;
    }

    /** One step; returns how much there was to do. */
    int doWork() {
        long now = wall.nowNs(); // before the edges are looked at: an earlier one is among them by now
        if (now - tickNs >= 0) {
            tick(now);
        }
        try {
            return step(now);
        } catch (RuntimeException fault) {
            vitals.stumbled();
            throw fault;
        }
    }

    private int step(long now) {
        long settledNs = source.settledNs(now); // likewise
        int work = edges.drainTo(taker);
        if (settledNs >= tracker.dueNs()) {
            tracker.advance(settledNs);
            work++;
        }
        rolls.advance(settledNs);
        work += commands();
        lamp.look(vitals.anyFault(), sensors.sees(), now);
        if (work > 0 || upNext == UpNext.ROLLS) {
            upNext = rolls.on() ? UpNext.ROLLS : UpNext.on(game.card());
        }
        return work;
    }

    /** For how long there is nothing to do unless an edge or a command comes, ns of the edges' clock. */
    long idleNs() {
        long now = wall.nowNs();
        return Math.max(0, Math.min(untilDueNs(now), tickNs - now));
    }

    private long untilDueNs(long now) {
        long due = tracker.dueNs();
        if (due == Long.MAX_VALUE) {
            return due;
        }
        long untilDue = due + source.latenessNs() - now;
        return untilDue <= 0 && source.settledNs(now) < due ? ASK_AGAIN_NS : untilDue;
    }

    private void edge(int channel, boolean active, long timeNs) {
        sensors.edge(channel, active, timeNs);
        rolls.edge(channel, active, timeNs);
        tracker.edge(channel, active, timeNs);
    }

    private int commands() {
        int served = 0;
        for (Desk.Asked asked; served < COMMANDS_AT_ONCE && (asked = desk.next()) != null; served++) {
            clerk.serve(asked);
        }
        return served;
    }

    private void tick(long now) {
        tickNs = now + Math.round(TICK_NS * paceOfTicks);
        wall.look();
        game.tellClock();
        sensors.tick(now);
        vitals.look(now);
    }

    private final class Resolved implements TrackSink {
        @Override
        public void attempt(Attempt attempt) {
            if (!rolls.has(attempt.timeNs())) {
                show(game.sensed(attempt));
            }
        }

        @Override
        public void untold(long timeNs) {
            sensors.untold();
        }

        @Override
        public void gesture(Gesture gesture, long timeNs) {
            if (rolls.has(timeNs)) {
                return;
            }
            switch (gesture) {
                case MISSED_UNSEEN -> show(game.missed(timeNs));
                case TAKE_BACK -> {
                    if (game.card().canTakeBack()) {
                        game.takeBack("pedal", null);
                    }
                }
                case NEXT -> next();
            }
        }

        private void next() {
            if (game.card().objectionToPass() == null) {
                game.pass(null);
            } else if (game.card().objectionToEnd() == null) {
                game.end(null);
            }
        }

        private void show(boolean taken) {
            if (taken) {
                lamp.putt(game.card().lastPutt(), wall.nowNs());
            }
        }
    }
}

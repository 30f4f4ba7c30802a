package org.cupbeam.studio;

import java.time.Instant;
import java.util.OptionalDouble;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.EndedBy;
import org.cupbeam.drill.Penalty;
import org.cupbeam.drill.Stations;
import org.cupbeam.drill.Supply;
import org.cupbeam.drill.Turns;
import org.cupbeam.event.Data;
import org.cupbeam.event.Event;
import org.cupbeam.event.EventJson;
import org.cupbeam.event.GreenNow;
import org.cupbeam.event.Play;
import org.cupbeam.event.Putt;
import org.cupbeam.event.Source;
import org.cupbeam.event.Stamp;
import org.cupbeam.event.Tags;

/** A lane that says what a test has it say, as events with the next number each. */
public final class ScriptedLane {
    public static final Drill LADDER = new Drill("Ladder", new Stations.Ladder(914.4, 914.4, 10), 6,
            Supply.EVERY_STATION, 1, OptionalDouble.of(914.4), Penalty.LOSE_BALL, Turns.STATION);
    public static final Tags TAGS = new Tags(Tags.Break.LEFT_TO_RIGHT, Tags.Slope.UPHILL);
    public static final GreenNow GREEN = new GreenNow(9.4, 0.2, 0.5);
    private static final Instant START = Instant.parse("2026-11-25T18:00:00Z");

    public final Source source;
    private String boot = "boot-1";
    private Stamp.Clock clock = Stamp.Clock.SYNCHRONISED;
    private long sequence;
    private Drill drill = LADDER;
    private long monotonicNs;
    private Instant wall = START;

    public ScriptedLane(String lane, String journal) {
        this("home", lane, journal);
    }

    public ScriptedLane(String studio, String lane, String journal) {
        this.source = new Source(studio, lane, journal);
    }

    /** Switches the machine on again, its wall clock standing wherever it stands. */
    public ScriptedLane boots(String name, Instant clockShows) {
        boot = name;
        monotonicNs = 0;
        wall = clockShows;
        clock = Stamp.Clock.UNSYNCHRONISED;
        return this;
    }

    /** From now on it plays this drill. */
    public ScriptedLane plays(Drill other) {
        drill = other;
        return this;
    }

    public ScriptedLane passes(long seconds) {
        monotonicNs += seconds * 1_000_000_000L;
        wall = wall.plusSeconds(seconds);
        return this;
    }

    public Event starts(String run, String duel, String player, int order) {
        return event(new Data.RunStarted(stamp(), new Data.Of(run, duel, player, order), drill, TAGS, 914.4));
    }

    public Event holes(String run, String duel, String player, int station) {
        return putts(run, duel, player, station, new Putt(Putt.Outcome.HOLED, Double.NaN, Double.NaN, Double.NaN,
                Double.NaN, false, 812.5, 402.3, false, Putt.How.SENSED));
    }

    public Event misses(String run, String duel, String player, int station, double finishMm) {
        return putts(run, duel, player, station, new Putt(Putt.Outcome.MISSED, finishMm, 8.5, finishMm - 17,
                finishMm + 17, finishMm > 914.4, 1250, finishMm, false, Putt.How.SENSED));
    }

    public Event puttsOutsideAnyRun() {
        return event(new Data.Attempt(stamp(), new Putt(Putt.Outcome.MISSED, Double.NaN, Double.NaN, Double.NaN, -120,
                false, Double.NaN, Double.NaN, false, Putt.How.ENTERED), null, Tags.NONE, GREEN));
    }

    public Event ends(String run, String duel, String player, int cleared, int attempts, int holed, double meanMissMm) {
        return event(new Data.RunEnded(stamp(), new Data.Of(run, duel, player, 1), cleared, attempts, holed, meanMissMm,
                EndedBy.OUT_OF_BALLS));
    }

    public Event endsDuel(String duel, String winner) {
        return event(new Data.DuelEnded(stamp(), duel, winner));
    }

    public Event takesBack(long of) {
        return event(new Data.Correction(stamp(), Data.Correction.What.TAKEN_BACK, of, "pedal", null));
    }

    public Event voids(long of, String by, String reason) {
        return event(new Data.Correction(stamp(), Data.Correction.What.VOIDED, of, by, reason));
    }

    public Event setsClock(Instant right) {
        clock = Stamp.Clock.SYNCHRONISED;
        wall = right;
        return event(new Data.Clock(stamp(), right));
    }

    public static byte[] json(Event event) {
        return EventJson.encode(event);
    }

    public String topic() {
        return "cupbeam/" + source.studio() + "/" + source.lane() + "/event";
    }

    public long sequence() {
        return sequence;
    }

    public Instant wall() {
        return wall;
    }

    private Event putts(String run, String duel, String player, int station, Putt putt) {
        Play play = new Play(run, duel, player, drill.name(), station, station * 914.4, station, 1, 5);
        return event(new Data.Attempt(stamp(), putt, play, TAGS, GREEN));
    }

    private Event event(Data data) {
        return new Event(source, ++sequence, wall, data);
    }

    private Stamp stamp() {
        return new Stamp(boot, monotonicNs, clock);
    }
}

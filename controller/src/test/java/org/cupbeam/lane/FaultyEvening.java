package org.cupbeam.lane;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.edge.practice.Evening;
import org.cupbeam.edge.practice.PracticeLane;
import org.cupbeam.edge.practice.Room;
import org.cupbeam.edge.practice.Truth;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Rig;
import org.cupbeam.track.Attempt;
import org.cupbeam.track.Doubt;
import org.cupbeam.track.TrackSink;
import org.cupbeam.track.Tracker;

/**
 * An evening on a simulated green with one sensor broken, played through the tracker and the lane's words for its sensors: what
 * they told, and the truth. Nobody strikes a second ball before the first lies still: which of two is which is another matter.
 */
final class FaultyEvening implements TrackSink {
    /** What breaks in mid-evening breaks now. */
    static final double FROM_S = 60;
    private static final double BALL_LEFT_S = 60;
    private static final double CHATTERS_S = 10;
    private static final double SUN_S = 60;
    private static final double ASIDE_MM = 50;
    /** Evenings on sound rigs, in which sensors then break. */
    private static final Map<List<Object>, Evening> SOUND = new ConcurrentHashMap<>();
    private static final long TICK_NS = 250_000_000;

    /** What is broken, and how. */
    enum Kind {
        NONE, STUCK_ON, STUCK_OFF, UNPLUGGED, CHATTERING, SWAPPED, MISPLACED, REVERSED, FLICKERING, BALL_LEFT, FULL;

        /** Whether it is so from the evening's start, since somebody fitted it so. */
        boolean isFromStart() {
            return switch (this) {
                case UNPLUGGED, SWAPPED, MISPLACED, REVERSED -> true;
                default -> false;
            };
        }

        /** When it is over again, s; infinite if never. */
        double endS() {
            return switch (this) {
                case CHATTERING -> FROM_S + CHATTERS_S;
                case FLICKERING -> FROM_S + SUN_S;
                case BALL_LEFT -> FROM_S + BALL_LEFT_S;
                default -> Double.POSITIVE_INFINITY;
            };
        }
    }

    /** A fault in the lane's words, when it first said so, and what it then could no longer know. */
    record Said(String words, long atNs, List<String> unknown) {
    }

    /** An attempt that was told, with the putt that it is of; null where there was none. */
    record Logged(Attempt attempt, Truth of) {
    }

    final List<Truth> truths;
    final List<Logged> logged = new ArrayList<>();
    final List<Said> said = new ArrayList<>();
    int untold;
    private final Rig rig;
    private final Tracker tracker;
    private final Sensors sensors;
    private final Doubt[] doubts;
    private final List<Attempt> attempts = new ArrayList<>();
    private long heardNs;
    /** When the last word of a fault was taken back; {@link Long#MAX_VALUE} while there is one. */
    private long wellNs;

    FaultyEvening(Kind kind, Rig rig, String sensor, long seed, int putts) {
        this.rig = rig;
        Evening evening = kind == Kind.MISPLACED ? Evening.simulate(seed, lane(kind, sensor), putts)
                : SOUND.computeIfAbsent(List.of(rig, seed, putts), of -> Evening.simulate(seed, lane(kind, sensor), putts));
        truths = evening.truths();
        tracker = new Tracker(rig, this);
        sensors = new Sensors(rig, tracker, 0);
        doubts = new Doubt[rig.channels().size()];
        Arrays.fill(doubts, Doubt.NONE);
        tracker.begin(0);
        evening.play(broken(kind, sensor, new Random(seed)));
        passTo(evening.endNs() + 20_000_000_000L);
        tracker.end();
        boolean[] used = new boolean[truths.size()];
        attempts.forEach(each -> logged.add(new Logged(each, match(each, used))));
    }

    private PracticeLane lane(Kind kind, String sensor) {
        Room busy = Room.busy();
        PracticeLane lane = PracticeLane.busy(rig).with(new Room(busy.walk(), busy.passBy(), busy.hand(), busy.reach(),
                busy.rollBack(), busy.forward(), busy.wave(), busy.stand(), 0, busy.bump()));
        return kind != Kind.MISPLACED ? lane : new PracticeLane(moved(sensor), lane.surface(), lane.sensing(), lane.room(),
                lane.player(), lane.stationsMm(), lane.restS(), lane.faults());
    }

    /** The rig as it truly is, its file telling otherwise. */
    private Rig moved(String name) {
        List<Beam> beams = rig.beams().stream().map(beam -> beam.channel() == channel(name)
                ? new Beam(beam.channel(), beam.positionMm() + ASIDE_MM, beam.heightMm()) : beam).toList();
        return new Rig(rig.stimpFt(), rig.uphillPercent(), rig.sidePercent(), rig.limitMm(), rig.channels(), beams,
                rig.lampGpio());
    }

    private EdgeSink broken(Kind kind, String sensor, Random dice) {
        int channel = sensor == null ? -1 : channel(sensor);
        return switch (kind) {
            case STUCK_ON, BALL_LEFT -> BrokenSensor.held(channel, true, FROM_S, kind.endS(), this::edge);
            case STUCK_OFF -> BrokenSensor.held(channel, false, FROM_S, kind.endS(), this::edge);
            case UNPLUGGED -> BrokenSensor.held(channel, false, 0, kind.endS(), this::edge);
            case CHATTERING -> BrokenSensor.flickering(channel, FROM_S, CHATTERS_S, new double[] {50e-6, 50e-6},
                    new double[] {50e-6, 50e-6}, dice, this::edge);
            case FLICKERING -> BrokenSensor.flickering(channel, FROM_S, SUN_S, new double[] {0.003, 0.06},
                    new double[] {0.005, 0.1}, dice, this::edge);
            case REVERSED -> BrokenSensor.reversed(channel, this::edge);
            case FULL -> BrokenSensor.full(channel, FROM_S, this::edge);
            case SWAPPED -> {
                int other = channel(sensor.replace("-1", "-2"));
                yield (which, active, timeNs) -> edge(which == channel ? other : which == other ? channel : which, active,
                        timeNs);
            }
            case NONE, MISPLACED -> this::edge;
        };
    }

    private int channel(String name) {
        for (int i = 0; i < rig.channels().size(); i++) {
            if (rig.channels().get(i).name().equals(name)) {
                return i;
            }
        }
        throw new AssertionError(name);
    }

    private void edge(int channel, boolean active, long timeNs) {
        passTo(timeNs);
        sensors.edge(channel, active, timeNs);
        tracker.edge(channel, active, timeNs);
    }

    private void passTo(long timeNs) {
        while (heardNs + TICK_NS <= timeNs) {
            heardNs += TICK_NS;
            tracker.advance(heardNs);
            hear();
        }
    }

    private void hear() {
        boolean changed = false;
        boolean well = true;
        for (int i = 0; i < doubts.length; i++) {
            changed |= tracker.doubt(i) != doubts[i];
            doubts[i] = tracker.doubt(i);
            well &= doubts[i] == Doubt.NONE;
        }
        if (changed) {
            wellNs = well ? heardNs : Long.MAX_VALUE;
            sensors.faults(List.of()).forEach(words -> said.add(new Said(words, heardNs, sensors.unknown())));
        }
    }

    /** The putt that was under way at the time of the attempt, ended alike if there is a choice. */
    private Truth match(Attempt attempt, boolean[] used) {
        int best = -1;
        for (int i = 0; i < truths.size(); i++) {
            Truth truth = truths.get(i);
            boolean during = truth.struckNs() - 50_000_000 <= attempt.timeNs()
                    && attempt.timeNs() <= truth.endedNs() + 500_000_000;
            if (during && !used[i] && (best < 0 || truth.holed() == attempt.holed())) {
                best = i;
            }
        }
        if (best < 0) {
            return null;
        }
        used[best] = true;
        return truths.get(best);
    }

    @Override
    public void attempt(Attempt attempt) {
        attempts.add(attempt);
    }

    @Override
    public void untold(long timeNs) {
        untold++;
        sensors.untold();
    }

    /** The fault as it was first said after a time, in words that begin so; null if it never was. */
    Said first(String beginning, double afterS) {
        return said.stream().filter(each -> each.atNs >= afterS * 1e9 && each.words.startsWith(beginning)).findFirst()
                .orElse(null);
    }

    /** Whether all was well again at the end. */
    boolean isWell() {
        return wellNs < Long.MAX_VALUE;
    }

    /** How many putts were struck between two times. */
    long putts(long fromNs, long toNs) {
        return truths.stream().filter(t -> t.struckNs() >= fromNs && t.struckNs() < toNs).count();
    }
}

package org.cupbeam.edge.practice;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.green.Ball;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;

/**
 * A simulated lane that somebody is fitting: hands that block beams one by one, drop a ball, press, and roll balls, seen as a
 * board sees it, as levels of lines of which nobody has yet said what hangs on them. Each deed hands over its edges at once,
 * on a clock that only deeds move on.
 */
public final class PracticeBench {
    private static final double NS_PER_S = 1e9;
    private static final long SETTLES_NS = 100_000_000;
    private static final long HAND_NS = 300_000_000;

    private final PracticeLane lane;
    private final List<Integer> gpios;
    private final Sensors sensors;
    private final Dice dice;
    private final double laneSpeed;
    private final int[] lineOf;
    private final EdgeSink raw;
    private long nowNs;

    /**
     * @param lane  the rig as it truly is, its errors on top
     * @param gpios the lines that are watched
     * @param raw   takes the lines' levels, true for high, by their index
     */
    public PracticeBench(long seed, PracticeLane lane, List<Integer> gpios, EdgeSink raw) {
        this.lane = lane;
        this.gpios = List.copyOf(gpios);
        this.raw = raw;
        Dice all = new Dice(seed);
        sensors = new Sensors(lane, all.split());
        dice = all.split();
        laneSpeed = 1 + lane.surface().laneSpeedSd() * dice.normal();
        lineOf = lane.rig().channels().stream().mapToInt(each -> this.gpios.indexOf(each.gpio())).toArray();
    }

    /** Switches it on: lines that rest high say so. */
    public void start() {
        for (int i = 0; i < lineOf.length; i++) {
            if (lineOf[i] >= 0 && lane.rig().channels().get(i).active() == Channel.Level.LOW) {
                raw.edge(lineOf[i], true, 0);
            }
        }
    }

    /** Where the beams truly stand, mm, in order. */
    public List<Double> placesMm() {
        return sensors.beams().stream().map(Light.Beam::positionMm).toList();
    }

    /** The green's true speed, ft. */
    public double stimpFt() {
        return lane.rig().stimpFt() * laneSpeed;
    }

    /** Nobody touches anything for a while. */
    public void rest(double seconds) {
        long untilNs = nowNs + Math.round(seconds * NS_PER_S);
        sensors.wires().spike(lane.sensing().spikesPerMinute(), nowNs, untilNs, dice);
        while (nowNs < untilNs) {
            nowNs = Math.min(untilNs, nowNs + SETTLES_NS);
            play();
        }
    }

    private void play() {
        sensors.wires().play(nowNs, (channel, active, timeNs) -> {
            if (lineOf[channel] >= 0) {
                raw.edge(lineOf[channel], active == (lane.rig().channels().get(channel).active() == Channel.Level.HIGH), timeNs);
            }
        });
        raw.settled(nowNs - Wire.SLACK_NS);
    }

    /** Makes the sensors of these names turn, all at once; a name that the lane does not have does nothing. */
    public void touch(String... names) {
        for (String name : names) {
            for (int i = 0; i < lineOf.length; i++) {
                Channel channel = lane.rig().channels().get(i);
                if (channel.name().equals(name)) {
                    sensors.wires().get(i).block(nowNs + HAND_NS, nowNs + HAND_NS + touchNs(channel.kind()));
                }
            }
        }
        rest(3);
    }

    private long touchNs(Channel.Kind kind) {
        return switch (kind) {
            case BEAM -> dice.ns(0.4, 1.2);
            case CUP -> dice.ns(0.02, 0.05);
            case STRIKE -> dice.ns(0.001, 0.004);
            case PEDAL -> dice.ns(0.1, 0.3);
        };
    }

    /** Rolls a ball beside the hole through all beams, and lets it come to rest. @param toward as putts go, else back */
    public void roll(boolean toward) {
        if (lane.rig().beams().isEmpty()) {
            return;
        }
        Rig rig = lane.rig();
        Turf turf = Turf.of(stimpFt() * (1 + lane.surface().puttSpeedSd() * dice.normal()), rig.uphillPercent(),
                rig.sidePercent(), lane.surface().slidingFriction());
        Shadow shadow = HandRoll.through(rig, turf, sensors.lights(), dice, toward ? 1 : -1);
        sensors.cast(shadow, nowNs);
        rest(shadow.changes().stream().mapToLong(Shadow.Change::timeNs).max().orElse(0) / NS_PER_S + 6);
    }

    /** A lane as a technician may find it: the full rig, some lines the other way round, beams some mm from where they were meant. */
    public static PracticeLane newLane(long seed) {
        Dice dice = new Dice(seed);
        Rig full = PracticeRigs.withPedal(PracticeRigs.FULL.on(10, 0.5, 0));
        List<Channel> channels = full.channels().stream().map(each -> new Channel(each.name(), each.kind(), each.gpio(),
                each.kind() == Channel.Kind.PEDAL || each.kind() == Channel.Kind.STRIKE ? Channel.Level.LOW : each.active(),
                each.pull())).toList();
        List<Beam> beams = new ArrayList<>();
        for (Beam beam : full.beams()) {
            beams.add(new Beam(beam.channel(), beam.positionMm() + 4 * dice.normal(),
                    Ball.RADIUS_MM + dice.between(-1, 1)));
        }
        return PracticeLane.clean(new Rig(full.stimpFt(), full.uphillPercent(), full.sidePercent(), full.limitMm(), channels, beams,
                full.lampGpio())).with(Surface.usual()).with(Sensing.usual());
    }
}

package org.cupbeam.edge.practice;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;

/** A lane's sensors as they truly stand, and the wires that lead from them. */
final class Sensors {
    private static final double NS_PER_S = 1e9;
    private static final double PAIR_MM = 150;

    /** Beams, two or more, by their index, that stand so close that one shoe covers them. */
    record Pair(List<Integer> beams) {
        int first() {
            return beams.get(0);
        }

        int last() {
            return beams.get(beams.size() - 1);
        }
    }

    private final List<Channel> channels;
    private final Wires wires;
    private final List<Fault> faults;
    private final boolean rattles;
    private final Dice dice;
    private final int cup;
    private final int strike;
    private final int pedal;
    /** The beams in order, then the cup's curtain where one is fitted. */
    private final List<Light> lights = new ArrayList<>();
    private final List<Integer> channelOfLight = new ArrayList<>();
    private final List<Light.Beam> beams = new ArrayList<>();
    private final List<Pair> pairs;

    Sensors(PracticeLane lane, Dice dice) {
        Rig rig = lane.rig();
        channels = rig.channels();
        wires = new Wires(channels.size(), lane.sensing(), dice);
        faults = lane.faults();
        rattles = lane.sensing().cup() == Sensing.CupSensor.RATTLE;
        this.dice = dice;
        cup = rig.channelOf(Channel.Kind.CUP);
        strike = rig.channelOf(Channel.Kind.STRIKE);
        pedal = rig.channelOf(Channel.Kind.PEDAL);
        for (Beam beam : rig.beams()) {
            double off = lane.sensing().beamPositionSdMm() * dice.normal();
            beams.add(new Light.Beam(beam.positionMm() + off, beam.heightMm()));
            channelOfLight.add(beam.channel());
        }
        lights.addAll(beams);
        if (cup >= 0) {
            lights.add(new Light.Curtain(Cup.LIGHT_AT_MM));
            channelOfLight.add(cup);
        }
        pairs = pairs(rig.beams());
        faults.forEach(this::apply);
    }

    private static List<Pair> pairs(List<Beam> beams) {
        List<Pair> pairs = new ArrayList<>();
        int from = 0;
        for (int i = 1; i <= beams.size(); i++) {
            if (i == beams.size() || beams.get(i).positionMm() - beams.get(i - 1).positionMm() > PAIR_MM) {
                if (i - from > 1) {
                    pairs.add(new Pair(IntStream.range(from, i).boxed().toList()));
                }
                from = i;
            }
        }
        return pairs;
    }

    private void apply(Fault fault) {
        long fromNs = Math.round(fault.fromS() * NS_PER_S);
        long toNs = Math.round(fault.toS() * NS_PER_S);
        Wire wire = wires.get(channelNamed(fault.channel()));
        switch (fault.kind()) {
            case STUCK -> wire.block(fromNs, toNs);
            case SILENT -> wire.mute(fromNs, toNs);
            case CHATTERING -> {
                for (long at = fromNs; at < toNs; at += dice.ns(0.001, 0.02)) {
                    wire.spike(at, dice.ns(0.0002, 0.0009));
                }
            }
        }
    }

    private int channelNamed(String name) {
        for (int i = 0; i < channels.size(); i++) {
            if (channels.get(i).name().equals(name)) {
                return i;
            }
        }
        throw new IllegalArgumentException("a fault names the channel " + name + ", which the rig lacks");
    }

    Wires wires() {
        return wires;
    }

    List<Light> lights() {
        return lights;
    }

    /** Where the beams truly stand, in order of their position. */
    List<Light.Beam> beams() {
        return beams;
    }

    List<Pair> pairs() {
        return pairs;
    }

    boolean hasCup() {
        return cup >= 0;
    }

    boolean hasStrike() {
        return strike >= 0;
    }

    Wire beamWire(int beam) {
        return wires.get(channelOfLight.get(beam));
    }

    Wire cupWire() {
        return wires.get(cup);
    }

    Wire strikeWire() {
        return wires.get(strike);
    }

    boolean hasPedal() {
        return pedal >= 0;
    }

    Wire pedalWire() {
        return wires.get(pedal);
    }

    /** Darkens what a ball blocked on its way, and tells whether any sensor in order could see it. */
    boolean cast(Shadow shadow, long startNs) {
        boolean seen = false;
        for (Shadow.Change change : shadow.changes()) {
            int channel = channelOfLight.get(change.light());
            if (channel == cup && rattles) {
                rattle(shadow, change, startNs);
            } else {
                wires.get(channel).change(change.blocked(), startNs + change.timeNs());
            }
            seen |= works(channel, startNs + change.timeNs());
        }
        return seen;
    }

    /** A ball that drops shakes the sensor, once, whatever it does at the bottom. */
    private void rattle(Shadow shadow, Shadow.Change change, long startNs) {
        boolean firstOfIt = shadow.changes().stream().filter(each -> each.light() == change.light())
                .findFirst().orElseThrow() == change;
        long atNs = startNs + change.timeNs();
        for (int pulses = firstOfIt ? dice.number(1, 6) : 0; pulses > 0; pulses--) {
            long endNs = atNs + dice.ns(0.004, 0.055);
            wires.get(cup).block(atNs, endNs);
            atNs = endNs + dice.ns(0.004, 0.06);
        }
    }

    /** Frees what a ball at rest blocks: it is picked up. */
    void lift(Shadow shadow, long timeNs) {
        for (int i = 0; i < lights.size(); i++) {
            if (shadow.blocks(i)) {
                wires.get(channelOfLight.get(i)).change(false, timeNs);
            }
        }
    }

    private boolean works(int channel, long timeNs) {
        double timeS = timeNs / NS_PER_S;
        return faults.stream().noneMatch(fault -> fault.fromS() <= timeS && timeS <= fault.toS()
                && fault.channel().equals(channels.get(channel).name()));
    }

    boolean strikeWorks(long timeNs) {
        return hasStrike() && works(strike, timeNs);
    }
}

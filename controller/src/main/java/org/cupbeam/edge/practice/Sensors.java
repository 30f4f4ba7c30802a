package org.cupbeam.edge.practice;

import java.util.List;
import java.util.SplittableRandom;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;

/** A lane's sensors as they truly stand, and the wires that lead from them. */
final class Sensors {
    private static final double NS_PER_MS = 1e6;

    private final Sensing sensing;
    private final Wires wires;
    private final int strike;
    /** What a ball may block, and the channel of each. */
    private final Shadow.Light[] lights;
    private final int[] channels;

    Sensors(PracticeLane lane, SplittableRandom random) {
        Rig rig = lane.rig();
        sensing = lane.sensing();
        wires = new Wires(rig.channels().size(), sensing, random);
        strike = rig.channelOf(Channel.Kind.STRIKE);
        List<Beam> beams = rig.beams();
        int cup = rig.channelOf(Channel.Kind.CUP);
        lights = new Shadow.Light[beams.size() + (cup < 0 ? 0 : 1)];
        channels = new int[lights.length];
        for (int i = 0; i < beams.size(); i++) {
            double off = sensing.beamPositionSdMm() * random.nextGaussian();
            lights[i] = new Shadow.Beam(beams.get(i).positionMm() + off, beams.get(i).heightMm());
            channels[i] = beams.get(i).channel();
        }
        if (cup >= 0) {
            lights[beams.size()] = new Shadow.CupCurtain(Cup.LIGHT_AT_MM);
            channels[beams.size()] = cup;
        }
    }

    Wires wires() {
        return wires;
    }

    /** Watches a ball from its start on, and darkens what it blocks. */
    Shadow watch(Body start, long startNs) {
        return new Shadow(lights, start, startNs,
                (light, blocked, timeNs) -> wires.get(channels[light]).change(blocked, timeNs));
    }

    /** Frees the lights that a ball at rest blocks: it is picked up. */
    void fetch(Shadow shadow, long timeNs) {
        for (int i = 0; i < lights.length; i++) {
            if (shadow.blocks(i)) {
                wires.get(channels[i]).change(false, timeNs);
            }
        }
    }

    /** The knock of a putter on a ball: a pulse of 1 to 4 ms; every third has an echo. Whether a sensor felt it. */
    boolean strike(long timeNs, SplittableRandom random) {
        double lengthMs = 1 + 3 * random.nextDouble();
        boolean echoes = random.nextDouble() < 0.3;
        double echoAfterMs = 5 + 8 * random.nextDouble();
        boolean felt = strike >= 0 && random.nextDouble() >= sensing.unfeltShare();
        if (felt) {
            wires.get(strike).block(timeNs, timeNs + Math.round(lengthMs * NS_PER_MS));
            if (echoes) {
                long echoNs = timeNs + Math.round(echoAfterMs * NS_PER_MS);
                wires.get(strike).block(echoNs, echoNs + Math.round(NS_PER_MS));
            }
        }
        return felt;
    }
}

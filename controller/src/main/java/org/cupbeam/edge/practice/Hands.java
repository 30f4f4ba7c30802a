package org.cupbeam.edge.practice;

import org.cupbeam.edge.practice.Sensors.Pair;

/** Hands and putters in the light. */
final class Hands {
    /** A ball that takes less than this for a beam reaches the next; a hand that takes less is no ball at rest. */
    private static final double SHORTER_THAN_A_STOP_S = 0.1;

    private final Sensors sensors;
    private final Dice dice;

    Hands(Sensors sensors, Dice dice) {
        this.sensors = sensors;
        this.dice = dice;
    }

    /**
     * A hand in the cup: in for a while, once or more, and between and after that fingers and the ball in short.
     *
     * @return when the last of it is over
     */
    long intoCup(long fromNs) {
        long atNs = fromNs;
        int times = dice.number(1, 3);
        for (int i = 0; i < times; i++) {
            long outNs = atNs + dice.ns(0.25, 1.4);
            sensors.cupWire().block(atNs, outNs);
            atNs = outNs;
            for (int chatter = dice.number(0, 3); chatter > 0; chatter--) {
                long onNs = atNs + dice.ns(0.008, 0.2);
                atNs = onNs + dice.ns(0.01, 0.065);
                sensors.cupWire().block(onNs, atNs);
            }
            atNs += dice.ns(0.05, 0.6);
        }
        return atNs;
    }

    /** Something waved through: a putter along the line, through a pair; or anything across it, through one beam. */
    long wave(Pair pair, long fromNs) {
        return dice.chance(0.5) ? swing(pair, fromNs) : flick(pair, fromNs);
    }

    /** A putter's head, not as long as a ball or much longer, swung to or fro; or both, as in a practice stroke. */
    private long swing(Pair pair, long fromNs) {
        double lengthMm = dice.chance(0.5) ? dice.between(14, 27) : dice.between(80, 120);
        boolean forth = dice.chance(0.5);
        long overNs = pass(pair, fromNs, lengthMm, (forth ? 1 : -1) * dice.between(300, 2200));
        if (dice.chance(0.5)) {
            overNs = pass(pair, overNs + dice.ns(0.2, 0.8), lengthMm, (forth ? -1 : 1) * dice.between(300, 2200));
        }
        return overNs;
    }

    private long pass(Pair pair, long fromNs, double lengthMm, double speedMmPerS) {
        double startMm = sensors.beams().get(speedMmPerS > 0 ? pair.first() : pair.last()).positionMm()
                - Math.signum(speedMmPerS) * lengthMm;
        long overNs = fromNs;
        for (int beam : pair.beams()) {
            double wayMm = (sensors.beams().get(beam).positionMm() - startMm) * Math.signum(speedMmPerS);
            double speed = Math.abs(speedMmPerS);
            long offNs = fromNs + Math.round((wayMm + lengthMm / 2) / speed * 1e9);
            sensors.beamWire(beam).block(fromNs + Math.round((wayMm - lengthMm / 2) / speed * 1e9), offNs);
            overNs = Math.max(overNs, offNs);
        }
        return overNs;
    }

    private long flick(Pair pair, long fromNs) {
        Wire wire = sensors.beamWire(dice.pick(pair.beams()));
        long atNs = fromNs;
        for (int i = dice.number(1, 3); i > 0; i--) {
            long offNs = atNs + dice.ns(0.012, SHORTER_THAN_A_STOP_S);
            wire.block(atNs, offNs);
            atNs = offNs + dice.ns(0.08, 0.5);
        }
        return atNs;
    }

    /** A bag or a foot set down on the strike sensor. */
    long bump(long fromNs) {
        long offNs = fromNs + dice.ns(0.015, 0.4);
        sensors.strikeWire().block(fromNs, offNs);
        return offNs;
    }

    /** A ball that lay in a beam is picked up, mostly with a hand or a shoe in both beams of its pair. */
    long pickUp(Shadow shadow, long atNs, double clumsiness) {
        sensors.lift(shadow, atNs);
        long goneNs = atNs;
        for (Pair pair : sensors.pairs()) {
            if (pair.beams().stream().anyMatch(shadow::blocks) && dice.chance(clumsiness)) {
                for (int beam : pair.beams()) {
                    long offNs = atNs + dice.ns(0.05, 0.4);
                    sensors.beamWire(beam).block(atNs - dice.ns(0.1, 0.5), offNs);
                    goneNs = Math.max(goneNs, offNs);
                }
            }
        }
        return goneNs;
    }
}

package org.cupbeam.edge.practice;

import org.cupbeam.edge.practice.Sensors.Pair;

/** Shoes in the beams. A shoe is longer and wider than a pair is apart, and so blocks both beams of one together. */
final class Feet {
    private final Sensors sensors;
    private final Dice dice;

    Feet(Sensors sensors, Dice dice) {
        this.sensors = sensors;
        this.dice = dice;
    }

    /**
     * Somebody walks over or along the line, and steps into one pair or several, one after the other.
     *
     * @return when the last foot has gone
     */
    long walk(long fromNs) {
        long atNs = fromNs;
        long goneNs = fromNs;
        boolean towardPlayer = dice.chance(0.5);
        int count = sensors.pairs().size();
        int only = dice.chance(0.6) ? dice.number(0, Math.max(0, count - 1)) : -1;
        for (int i = 0; i < count; i++) {
            int next = towardPlayer ? count - 1 - i : i;
            if (only < 0 || only == next) {
                goneNs = Math.max(goneNs, step(sensors.pairs().get(next), atNs));
                atNs += dice.ns(0.2, 0.7);
            }
        }
        return goneNs;
    }

    /** A foot or two put down in a pair. */
    long step(Pair pair, long fromNs) {
        long goneNs = shoe(pair, fromNs, dice.ns(0.1, 0.9));
        if (dice.chance(0.4)) {
            goneNs = shoe(pair, goneNs + dice.ns(-0.05, 0.4), dice.ns(0.1, 0.9));
        }
        if (dice.chance(0.3)) {
            flutter(pair, goneNs);
        }
        return goneNs;
    }

    /** Stands there for seconds; or with the tip of a shoe in the second beam alone, where no ball can be first. */
    long stand(Pair pair, long fromNs) {
        long lengthNs = dice.ns(2, 12);
        if (pair.beams().size() > 1 && dice.chance(0.3)) {
            sensors.beamWire(pair.beams().get(1)).block(fromNs, fromNs + lengthNs);
            return fromNs + lengthNs;
        }
        return shoe(pair, fromNs, lengthNs);
    }

    private long shoe(Pair pair, long fromNs, long lengthNs) {
        long goneNs = fromNs;
        for (int beam : pair.beams()) {
            long onNs = fromNs + dice.ns(0, 0.04);
            long offNs = fromNs + Math.max(lengthNs + dice.ns(-0.04, 0.04), dice.ns(0.05, 0.06));
            sensors.beamWire(beam).block(onNs, offNs);
            goneNs = Math.max(goneNs, offNs);
        }
        return goneNs;
    }

    /** A lace or the hem of a trouser leg, after the shoe. */
    private void flutter(Pair pair, long afterNs) {
        for (int beam : pair.beams()) {
            if (dice.chance(0.5)) {
                long atNs = afterNs + dice.ns(0.005, 0.05);
                sensors.beamWire(beam).block(atNs, atNs + dice.ns(0.003, 0.03));
            }
        }
    }
}

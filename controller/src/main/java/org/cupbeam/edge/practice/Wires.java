package org.cupbeam.edge.practice;

import org.cupbeam.edge.EdgeSink;

/** All channels of a rig, and their edges in order of time. */
final class Wires {
    private final Wire[] wires;

    Wires(int channels, Sensing sensing, Dice dice) {
        wires = new Wire[channels];
        for (int i = 0; i < channels; i++) {
            wires[i] = new Wire(sensing, dice.split());
        }
    }

    Wire get(int channel) {
        return wires[channel];
    }

    /** Spikes of 10 to 80 µs on every channel, at random within this time. */
    void spike(double perMinute, long fromNs, long toNs, Dice dice) {
        if (perMinute <= 0) {
            return;
        }
        for (Wire wire : wires) {
            long atNs = fromNs + Math.round(1e9 * dice.wait(perMinute / 60));
            while (atNs < toNs) {
                wire.spike(atNs, dice.ns(10e-6, 80e-6));
                atNs += Math.round(1e9 * dice.wait(perMinute / 60));
            }
        }
    }

    /** Hands over every edge up to a time before which nothing new will be told. */
    void play(long untilNs, EdgeSink sink) {
        for (Wire wire : wires) {
            wire.advance(untilNs);
        }
        long settledNs = untilNs - Wire.SLACK_NS;
        int next = earliest();
        while (next >= 0 && wires[next].nextTurnNs() < settledNs) {
            long timeNs = wires[next].nextTurnNs();
            sink.edge(next, wires[next].takeTurn(), timeNs);
            next = earliest();
        }
    }

    private int earliest() {
        int first = -1;
        long firstNs = Long.MAX_VALUE;
        for (int i = 0; i < wires.length; i++) {
            if (wires[i].nextTurnNs() < firstNs) {
                firstNs = wires[i].nextTurnNs();
                first = i;
            }
        }
        return first;
    }
}

package org.cupbeam.bench;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Instant;
import java.util.SplittableRandom;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.edge.trace.VcdWriter;
import org.cupbeam.rig.Rig;

/**
 * An evening on a full rig at which nobody putts: shoes in a pair, whose limbs chatter; spikes; a hand in the cup; a ball
 * rolled back; something set down on the strike sensor. There is no attempt in it.
 */
final class Noise {
    private static final long SEED = 20_261_125;
    private static final int EVENTS = 5_000;
    private static final long MS = 1_000_000;
    private static final long US = 1_000;

    private final SplittableRandom random = new SplittableRandom(SEED);
    private final EdgeSink sink;
    private final Rig rig;
    private long nowNs;

    private Noise(Rig rig, EdgeSink sink) {
        this.rig = rig;
        this.sink = sink;
    }

    static Trace evening() throws IOException {
        Rig rig = PracticeRigs.FULL.level();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (VcdWriter writer = new VcdWriter(bytes, rig, 0, Instant.EPOCH)) {
            Noise noise = new Noise(rig, writer);
            for (int i = 0; i < EVENTS; i++) {
                noise.happen(i % 5);
            }
            writer.settled(noise.nowNs);
        }
        return new Trace(rig, bytes.toByteArray());
    }

    private void happen(int what) {
        nowNs += between(2_000, 6_000) * MS;
        switch (what) {
            case 0 -> shoe(channel(random.nextBoolean() ? "before-1" : "past-1"));
            case 1 -> spikes();
            case 2 -> block(channel("cup"), between(300, 1_500) * MS);
            case 3 -> rolledBack();
            default -> block(channel("strike"), between(20, 400) * MS);
        }
    }

    /** Over a pair: the second beam before the first is clear again. */
    private void shoe(int first) {
        chatter(first, true);
        nowNs += between(20, 60) * MS;
        chatter(first + 1, true);
        nowNs += between(100, 400) * MS;
        chatter(first, false);
        nowNs += between(20, 60) * MS;
        chatter(first + 1, false);
    }

    private void rolledBack() {
        for (String beam : new String[] {"past-2", "past-1", "behind-2", "behind-1", "before-2", "before-1"}) {
            pulse(channel(beam), between(30, 60) * MS);
            nowNs += between(60, 120) * MS;
        }
    }

    private void spikes() {
        for (int i = 0; i < 10; i++) {
            pulse(random.nextInt(rig.channels().size()), between(5, 200) * US);
            nowNs += between(20, 200) * MS;
        }
    }

    private void block(int channel, long forNs) {
        chatter(channel, true);
        nowNs += forNs;
        chatter(channel, false);
    }

    /** Turns over a few times before it stays what it is to be. */
    private void chatter(int channel, boolean finallyActive) {
        for (int i = 0; i < 3; i++) {
            edge(channel, finallyActive);
            nowNs += between(20, 300) * US;
            edge(channel, !finallyActive);
            nowNs += between(20, 300) * US;
        }
        edge(channel, finallyActive);
    }

    private void pulse(int channel, long forNs) {
        edge(channel, true);
        nowNs += forNs;
        edge(channel, false);
    }

    private void edge(int channel, boolean active) {
        sink.edge(channel, active, nowNs);
    }

    private int channel(String name) {
        for (int i = 0; i < rig.channels().size(); i++) {
            if (rig.channels().get(i).name().equals(name)) {
                return i;
            }
        }
        throw new IllegalArgumentException("no channel is called " + name);
    }

    private long between(long least, long most) {
        return random.nextLong(least, most);
    }
}

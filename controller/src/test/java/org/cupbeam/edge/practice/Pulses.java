package org.cupbeam.edge.practice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.rig.Rig;

/** What a rig's sensors said, as pulses. */
final class Pulses implements EdgeSink {
    record Pulse(String channel, long fromNs, long toNs) {
        double lengthMs() {
            return (toNs - fromNs) / 1e6;
        }

        boolean overlaps(Pulse other) {
            return fromNs < other.toNs && other.fromNs < toNs;
        }
    }

    private final Rig rig;
    private final long[] since;
    private final List<Pulse> pulses = new ArrayList<>();

    Pulses(Rig rig) {
        this.rig = rig;
        since = new long[rig.channels().size()];
        Arrays.fill(since, -1);
    }

    static Pulses of(Evening evening) {
        Pulses pulses = new Pulses(evening.rig());
        evening.play(pulses);
        return pulses;
    }

    @Override
    public void edge(int channel, boolean active, long timeNs) {
        if (active != since[channel] < 0) {
            throw new AssertionError(rig.channels().get(channel).name() + " says twice that it is " + active);
        }
        if (!active) {
            pulses.add(new Pulse(rig.channels().get(channel).name(), since[channel], timeNs));
        }
        since[channel] = active ? timeNs : -1;
    }

    /** All pulses that are over, in the order in which they began. */
    List<Pulse> all() {
        return pulses.stream().sorted(Comparator.comparingLong(Pulse::fromNs)).toList();
    }

    List<Pulse> on(String channel) {
        return all().stream().filter(pulse -> pulse.channel().equals(channel)).toList();
    }

    boolean allOver() {
        return Arrays.stream(since).allMatch(each -> each < 0);
    }
}

package org.cupbeam.lane;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.edge.ChannelHealth;
import org.cupbeam.event.Health;
import org.cupbeam.event.Health.Sensor.Condition;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;
import org.cupbeam.track.Doubt;
import org.cupbeam.track.Reason;
import org.cupbeam.track.Tracker;

/** The condition of all of a lane's sensors, and what the tracker thinks of them, in words. */
final class Sensors {
    private final Rig rig;
    private final List<Channel> channels;
    private final SensorWatch[] watches;
    private final Tracker tracker;
    private long edges;
    private int untold;

    Sensors(Rig rig, Tracker tracker, long nowNs) {
        this.rig = rig;
        this.tracker = tracker;
        channels = rig.channels();
        watches = new SensorWatch[channels.size()];
        for (int i = 0; i < watches.length; i++) {
            watches[i] = new SensorWatch(nowNs);
        }
    }

    void edge(int channel, boolean active, long timeNs) {
        edges++;
        watches[channel].edge(active, timeNs);
    }

    /** A ball came of which nothing could be told. */
    void untold() {
        untold++;
    }

    /** How many there have been, of all sensors. */
    long edges() {
        return edges;
    }

    void tick(long nowNs) {
        for (SensorWatch watch : watches) {
            watch.tick(nowNs);
        }
    }

    /** Whether a ball, or whatever else, is in a beam that can be believed. */
    boolean sees() {
        for (int i = 0; i < watches.length; i++) {
            if (channels.get(i).kind() == Channel.Kind.BEAM && watches[i].active() && tracker.doubt(i).isBelieved()) {
                return true;
            }
        }
        return false;
    }

    /** What cannot be known any more for want of the sensors that are not believed, in words. */
    List<String> unknown() {
        List<String> lost = new ArrayList<>(Knowledge.lost(rig, channel -> tracker.doubt(channel).isBelieved()));
        if (untold > 0) {
            lost.add("what became of " + untold + (untold == 1 ? " ball" : " balls") + " since the start, while a sensor was out"
                    + " of order: they are not counted");
        }
        return lost;
    }

    List<Health.Sensor> report(long nowNs) {
        List<Health.Sensor> report = new ArrayList<>();
        for (int i = 0; i < watches.length; i++) {
            Doubt doubt = tracker.doubt(i);
            report.add(new Health.Sensor(channels.get(i).name(), kind(channels.get(i)), condition(watches[i], doubt),
                    watches[i].lastEdgeAgoS(nowNs), watches[i].edgesPerMinute()));
        }
        return report;
    }

    private static Condition condition(SensorWatch watch, Doubt doubt) {
        return switch (doubt) {
            case CHATTERING -> Condition.CHATTERING;
            case STUCK, REVERSED -> Condition.STUCK;
            case NONE, SILENT, DRY, SWAPPED, MISPLACED -> !watch.seen() ? Condition.UNSEEN
                    : watch.active() ? Condition.BLOCKED : Condition.CLEAR;
        };
    }

    /** What is wrong, in words. */
    List<String> faults(List<ChannelHealth> wires) {
        List<String> faults = new ArrayList<>();
        for (int i = 0; i < watches.length; i++) {
            Reason reason = tracker.reason(i);
            boolean ofTwo = reason.doubt() == Doubt.SWAPPED || reason.doubt() == Doubt.MISPLACED;
            // What is said of two is said once, of the first.
            if (reason.doubt() != Doubt.NONE && !(ofTwo && reason.fellow() < i)) {
                faults.add(FaultWords.of(channels.get(i), reason, reason.fellow() < 0 ? null : channels.get(reason.fellow())));
            }
        }
        for (ChannelHealth wire : wires) {
            wrong(wire, faults);
        }
        return faults;
    }

    private static void wrong(ChannelHealth wire, List<String> faults) {
        if (!wire.fault().isEmpty()) {
            faults.add(wire.channel() + " cannot be read: " + wire.fault());
        }
        if (!wire.kernelTime()) {
            faults.add(wire.channel() + " comes without the kernel's time, so finishes are less sure;"
                    + " a 64-bit system gives it");
        }
        if (wire.lost() > 0) {
            faults.add(wire.channel() + " has lost edges since the start: look whether the board has too much to do");
        }
    }

    private static Health.Sensor.Kind kind(Channel channel) {
        return switch (channel.kind()) {
            case CUP -> Health.Sensor.Kind.CUP;
            case STRIKE -> Health.Sensor.Kind.STRIKE;
            case PEDAL -> Health.Sensor.Kind.PEDAL;
            case BEAM -> Health.Sensor.Kind.BEAM;
        };
    }
}

package org.cupbeam.lane;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.edge.ChannelHealth;
import org.cupbeam.event.Health;
import org.cupbeam.event.Health.Sensor.Condition;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;
import org.cupbeam.track.Tracker;

/** The condition of all of a lane's sensors; keeps the tracker from believing one that is out of order. */
final class Sensors {
    private final List<Channel> channels;
    private final SensorWatch[] watches;
    private final boolean[] believed;
    private final Tracker tracker;
    private long edges;

    Sensors(Rig rig, Tracker tracker, long nowNs) {
        this.tracker = tracker;
        channels = rig.channels();
        watches = new SensorWatch[channels.size()];
        believed = new boolean[channels.size()];
        for (int i = 0; i < watches.length; i++) {
            watches[i] = new SensorWatch(channels.get(i).kind(), nowNs);
            believed[i] = true;
        }
    }

    void edge(int channel, boolean active, long timeNs) {
        edges++;
        watches[channel].edge(active, timeNs);
        believe(channel);
    }

    /** How many there have been, of all sensors. */
    long edges() {
        return edges;
    }

    void tick(long nowNs) {
        for (int i = 0; i < watches.length; i++) {
            watches[i].tick(nowNs);
            believe(i);
        }
    }

    private void believe(int channel) {
        boolean usable = watches[channel].usable();
        if (usable != believed[channel]) {
            believed[channel] = usable;
            tracker.setUsable(channel, usable);
        }
    }

    /** Whether a ball, or whatever else, is in a beam that can be believed. */
    boolean sees() {
        for (int i = 0; i < watches.length; i++) {
            if (channels.get(i).kind() == Channel.Kind.BEAM && watches[i].active() && believed[i]) {
                return true;
            }
        }
        return false;
    }

    List<Health.Sensor> report(long nowNs) {
        List<Health.Sensor> report = new ArrayList<>();
        for (int i = 0; i < watches.length; i++) {
            report.add(new Health.Sensor(channels.get(i).name(), kind(channels.get(i)), watches[i].condition(),
                    watches[i].lastEdgeAgoS(nowNs), watches[i].edgesPerMinute()));
        }
        return report;
    }

    /** What is wrong, in words. */
    List<String> faults(List<ChannelHealth> wires) {
        List<String> faults = new ArrayList<>();
        for (int i = 0; i < watches.length; i++) {
            String name = inWords(channels.get(i));
            Condition condition = watches[i].condition();
            if (condition == Condition.STUCK) {
                faults.add(name + " " + stuck(channels.get(i).kind()) + "; until then it is not believed");
            } else if (condition == Condition.CHATTERING) {
                faults.add(name + " turns on and off faster than anything in play can: " + loose(channels.get(i).kind())
                        + "; until it is quiet it is not believed");
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

    private static String inWords(Channel channel) {
        return switch (channel.kind()) {
            case BEAM -> "beam " + channel.name();
            case CUP -> "the cup's sensor";
            case STRIKE -> "the strike sensor";
            case PEDAL -> "the pedal";
        };
    }

    private static String stuck(Channel.Kind kind) {
        return switch (kind) {
            case BEAM -> "is blocked all the time: take away whatever lies in it, wipe it, and see that its lamp points"
                    + " at it and its cable is in";
            case CUP -> "is blocked all the time: see what lies in the cup, wipe the sensor, and see that its cable is in";
            case STRIKE, PEDAL -> "is pressed all the time: take away whatever rests on it, and look at its cable";
        };
    }

    private static String loose(Channel.Kind kind) {
        return switch (kind) {
            case BEAM -> "turn its lamp to it, keep sunlight off it, and look at its cable and its supply";
            case CUP, STRIKE, PEDAL -> "look at its cable, its plug and its supply";
        };
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

package org.cupbeam.track;

import org.cupbeam.edge.EdgeSink;
import org.cupbeam.rig.Rig;
import org.cupbeam.track.TrackSink.Gesture;

/**
 * Edges in, attempts out, for one lane.
 *
 * <p>It has no clock: time is what the edges, and {@link #advance}, say. Whatever waits for time (a pulse to be over, a
 * ball to stop) is settled in order of time before the next edge is taken, so that the same edges give the same attempts
 * to the bit, live or replayed. Not thread-safe; no allocation but for an attempt.
 */
public final class Tracker implements EdgeSink {
    private static final long FAR = Long.MAX_VALUE / 2;
    /** Longer than this in one beam without a break, and with nobody about, is a ball at rest. */
    private static final double REST_S = 0.6;
    private static final long REST_QUIET_BEFORE_NS = 700_000_000;

    private final Lay lay;
    private final Room room;
    private final LaneBelief lane;
    private final Flight flight;
    private final CupWatch cup = new CupWatch();
    private final Strikes strikes = new Strikes();
    private final Pedal pedal = new Pedal();
    private final TrackSink sink;
    private long restSeenNs = Sensor.NEVER;
    private long dueNs = Sensor.NEVER;
    private long settledNs = Long.MIN_VALUE;

    public Tracker(Rig rig, TrackSink sink) {
        this.sink = sink;
        lay = new Lay(rig);
        room = new Room(rig, lay);
        lane = new LaneBelief(rig);
        flight = new Flight(lay, room, lane, strikes, sink);
    }

    @Override
    public void edge(int channel, boolean active, long timeNs) {
        if (timeNs >= dueNs) {
            advance(timeNs);
        }
        Sensor sensor = room.sensor(channel);
        sensor.edge(active, timeNs);
        dueNs = Math.min(dueNs, sensor.closesNs());
        if (active && lay.beams > 0 && channel == lay.channel[0]) {
            dueNs = Math.min(dueNs, restsNs());
        }
    }

    /** Settles all that is due up to a time, edges or none. */
    public void advance(long timeNs) {
        dueNs = firstDueNs();
        while (dueNs <= timeNs && dueNs != Sensor.NEVER) {
            settledNs = Math.max(settledNs, dueNs);
            settle(dueNs);
            dueNs = firstDueNs();
        }
    }

    /** When something is settled by time alone if no edge comes before; {@link Long#MAX_VALUE} if nothing waits. */
    public long dueNs() {
        return dueNs;
    }

    /** Whether a channel's word counts: edges of one that is faulty make no attempts, and its silence says nothing. */
    public void setUsable(int channel, boolean whether) {
        room.setUsable(channel, whether);
        dueNs = firstDueNs();
    }

    /** Settles all that is open: no edge will come any more. */
    public void end() {
        advance(FAR);
    }

    /** The green's reading as the putts so far have it, ft. */
    public double stimpFt() {
        return lane.stimpFt();
    }

    /** Standard deviation of that, ft. */
    public double stimpSdFt() {
        return lane.stimpSdFt();
    }

    /** Where a ball's centre is when the first beam that can be relied on sees it, mm; NaN where there is none. */
    public double unseenMm() {
        for (int i = 0; i < lay.beams; i++) {
            if (room.isUsable(lay.channel[i])) {
                return lay.arrivalMm(i);
            }
        }
        return Double.NaN;
    }

    private long firstDueNs() {
        int closing = room.nextToClose();
        long first = closing < 0 ? Sensor.NEVER : room.sensor(closing).closesNs();
        first = Math.min(first, flight.dueNs());
        first = Math.min(first, strikeDueNs());
        first = Math.min(first, cupDueNs());
        first = Math.min(first, pedalDueNs());
        return Math.min(first, restsNs());
    }

    private void settle(long due) {
        int closing = room.nextToClose();
        if (closing >= 0 && room.sensor(closing).closesNs() == due) {
            if (room.sensor(closing).close()) {
                pulse(closing);
            }
        } else if (flight.dueNs() == due) {
            flight.settle(settledNs);
        } else if (strikeDueNs() == due) {
            sink.attempt(Verdict.missedUnseen(strikes.takeOldest(), settledNs, unseenMm()));
        } else if (cupDueNs() == due) {
            drop(cup.takeDrop());
        } else if (pedalDueNs() == due) {
            sink.gesture(Gesture.MISSED_UNSEEN, pedal.settle());
        } else if (restsNs() == due) {
            rest(settledNs);
        }
    }

    private void pulse(int channel) {
        if (!room.isUsable(channel)) {
            return;
        }
        Sensor sensor = room.sensor(channel);
        int beam = room.beamOf(channel);
        if (beam >= 0) {
            flight.crossing(beam, sensor.lastOnNs(), sensor.lastOffNs());
        } else if (channel == room.cup) {
            cupPulse(sensor.lastOnNs(), sensor.lastOffNs());
        } else if (channel == room.strike) {
            strikes.pulse(sensor.lastOnNs(), sensor.lastOffNs());
        } else {
            press(sensor.lastOnNs(), sensor.lastOffNs());
        }
    }

    private void press(long onNs, long offNs) {
        if (pedal.isLong(onNs, offNs) && pedal.settlesNs() != Sensor.NEVER) {
            sink.gesture(Gesture.MISSED_UNSEEN, pedal.settle());
        }
        Gesture gesture = pedal.pressed(onNs, offNs);
        if (gesture != null) {
            sink.gesture(gesture, onNs);
        }
    }

    private void cupPulse(long onNs, long offNs) {
        CupWatch.Pulse pulse = cup.pulse(onNs, offNs);
        if (room.seesApproach()) {
            switch (pulse) {
                case DROP -> flight.drop(cup.takeDrop(), settledNs, false);
                case LATE_RATTLE -> flight.drop(onNs, settledNs, true);
                case RATTLE, HAND -> { }
            }
        }
    }

    private void drop(long dropNs) {
        long struck = strikes.takeForDrop(dropNs);
        strikes.felt(struck != Sensor.NEVER);
        sink.attempt(Verdict.holedUnseen(struck == Sensor.NEVER ? dropNs : struck, settledNs));
    }

    /** A drop that no beam could foretell is believed once it has settled. */
    private long cupDueNs() {
        return room.cup < 0 || room.sensor(room.cup).isOpen() ? Sensor.NEVER : cup.settlesNs();
    }

    private long pedalDueNs() {
        return room.pedal < 0 || room.sensor(room.pedal).isOpen() ? Sensor.NEVER : pedal.settlesNs();
    }

    /** A strike of which nothing came is a ball that stopped short, once no ball could still roll so far. */
    private long strikeDueNs() {
        long oldest = strikes.oldestNs();
        return oldest == Sensor.NEVER ? Sensor.NEVER : oldest + longestRollNs();
    }

    private long longestRollNs() {
        return (long) (Math.sqrt(2 * (Strikes.FARTHEST_MM + 1000) / lane.decelerationMmPerS2()) * 1e9);
    }

    /** When a ball that lies in the first beam may be taken to be one. */
    private long restsNs() {
        if (lay.beams == 0 || !room.isUsable(lay.channel[0])) {
            return Sensor.NEVER;
        }
        long since = room.sensor(lay.channel[0]).blockedSinceNs();
        if (since == Sensor.NEVER || since == restSeenNs) {
            return Sensor.NEVER;
        }
        double crossing = Math.sqrt(4 * lay.halfChordMm[0] / lane.decelerationMmPerS2());
        return since + (long) ((crossing + REST_S) * 1e9);
    }

    private void rest(long nowNs) {
        long since = room.sensor(lay.channel[0]).blockedSinceNs();
        restSeenNs = since;
        if (!room.isQuiet(since - REST_QUIET_BEFORE_NS, nowNs, lay.channel[0], lay.channel[0])) {
            return;
        }
        long first = since;
        if (room.feelsStrikes()) {
            double arriving = Math.sqrt(2 * lane.decelerationMmPerS2() * lay.halfChordMm[0]);
            first = strikes.takeFor(since, arriving, lane.decelerationMmPerS2());
            if (first == Sensor.NEVER) {
                return;
            }
        }
        sink.attempt(Verdict.missedIn(first, nowNs, lay.positionMm[0] + lane.mean[LaneBelief.offset(0)],
                lay.halfChordMm[0]));
    }
}

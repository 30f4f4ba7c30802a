package org.cupbeam.track;

import org.cupbeam.edge.EdgeSink;
import org.cupbeam.rig.Rig;
import org.cupbeam.track.PairGauge.Pass;
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

    private final Lay lay;
    private final Room room;
    private final LaneBelief lane;
    private final Flight flight;
    private final CupWatch cup = new CupWatch();
    private final Strikes strikes = new Strikes();
    private final Doubts doubts;
    private final Belief belief;
    private final Silence silence;
    private final Pairs pairs;
    private final Resting resting;
    private final Pedal pedal = new Pedal();
    private final TrackSink sink;
    private long dueNs = Sensor.NEVER;
    private long settledNs = Long.MIN_VALUE;
    private long heardNs = Long.MIN_VALUE;
    /** The last clean drop to which no ball was on its way. */
    private long unforetoldNs = Long.MIN_VALUE;

    public Tracker(Rig rig, TrackSink sink) {
        this.sink = sink;
        lay = new Lay(rig);
        room = new Room(rig, lay);
        lane = new LaneBelief(rig);
        silence = new Silence(sink);
        pairs = new Pairs(lay);
        doubts = new Doubts(rig, lay, room, pairs, silence);
        flight = new Flight(lay, room, lane, strikes, silence);
        belief = new Belief(lay, room, doubts, flight, strikes);
        resting = new Resting(lay, room, lane, strikes, doubts);
    }

    /** The lane begins: whatever is on just after this was so before. Without it nothing is taken to be. */
    public void begin(long timeNs) {
        doubts.begin(timeNs);
    }

    @Override
    public void edge(int channel, boolean active, long timeNs) {
        if (timeNs >= dueNs) {
            advance(timeNs);
        }
        heardNs = timeNs;
        Sensor sensor = room.sensor(channel);
        sensor.edge(active, timeNs);
        if (doubts.edge(channel, active, timeNs)) {
            belief.ask(timeNs);
        }
        dueNs = Math.min(dueNs, Math.min(sensor.closesNs(), doubts.dueNs()));
        if (active && lay.beams > 0 && channel == lay.channel[0]) {
            dueNs = Math.min(dueNs, resting.dueNs());
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

    /** Rules a channel out, or in again, whatever its edges say. */
    void setUsable(int channel, boolean whether) {
        doubts.ruleOut(channel, !whether);
        belief.ask(Math.max(heardNs, settledNs));
        dueNs = firstDueNs();
    }

    /** Why a channel's sensor is not believed: its edges make no attempts then, and its silence says nothing. */
    public Doubt doubt(int channel) {
        return doubts.of(channel);
    }

    /** The same, with what it takes to put it right. */
    public Reason reason(int channel) {
        return doubts.reason(channel);
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
        return flight.unseenMm(Long.MAX_VALUE);
    }

    private long firstDueNs() {
        int closing = room.nextToClose();
        long first = closing < 0 ? Sensor.NEVER : room.sensor(closing).closesNs();
        first = Math.min(first, flight.dueNs());
        first = Math.min(first, strikeDueNs());
        first = Math.min(first, cupDueNs());
        first = Math.min(first, pedalDueNs());
        first = Math.min(first, doubts.dueNs());
        return Math.min(first, resting.dueNs());
    }

    private void settle(long due) {
        int closing = room.nextToClose();
        if (closing >= 0 && room.sensor(closing).closesNs() == due) {
            if (room.sensor(closing).close()) {
                pulse(closing);
                belief.afterPulse(closing, settledNs);
            }
        } else {
            settleOther(due);
            belief.ask(settledNs);
        }
        if (doubts.settle(due)) {
            belief.ask(settledNs);
        }
    }

    private void settleOther(long due) {
        if (flight.dueNs() == due) {
            flight.settle(settledNs);
        } else if (strikeDueNs() == due) {
            stoppedShort(strikes.takeOldest());
        } else if (cupDueNs() == due) {
            drop(cup.takeDrop());
        } else if (pedalDueNs() == due) {
            sink.gesture(Gesture.MISSED_UNSEEN, pedal.settle());
        } else if (resting.dueNs() == due) {
            Attempt rests = resting.settle(settledNs);
            if (rests != null) {
                silence.attempt(rests);
            }
        }
    }

    /** Nothing came of a strike: a miss, unless it may have dropped where the cup, or the beams before it, cannot tell. */
    private void stoppedShort(long struckNs) {
        if (room.cupInDoubt(struckNs, settledNs) || unforetoldNs > struckNs) {
            sink.untold(struckNs);
        } else {
            silence.attempt(Verdict.missedUnseen(struckNs, settledNs, flight.unseenMm(struckNs)));
        }
    }

    private void pulse(int channel) {
        int beam = room.beamOf(channel);
        Pass pass = heard(channel, beam);
        if (!room.isUsable(channel)) {
            return;
        }
        Sensor sensor = room.sensor(channel);
        if (beam >= 0) {
            flight.crossing(beam, sensor.lastOnNs(), sensor.lastOffNs(), pass, pairs.isUnsure(beam));
        } else if (channel == room.cup) {
            cupPulse(sensor.lastOnNs(), sensor.lastOffNs());
        } else if (channel == room.strike) {
            strikes.pulse(sensor.lastOnNs(), sensor.lastOffNs());
        } else {
            press(sensor.lastOnNs(), sensor.lastOffNs());
        }
    }

    /** What a pulse says of the sensors, whether they are believed or not: how it passed a pair. */
    private Pass heard(int channel, int beam) {
        if (beam < 0) {
            if (channel == room.cup) {
                silence.cup();
            } else if (channel == room.strike) {
                silence.struck();
            }
            return Pass.NONE;
        }
        Sensor sensor = room.sensor(channel);
        int fellow = lay.fellow(beam);
        return pairs.pulse(beam, sensor.lastOnNs(), sensor.lastOffNs(), fellow >= 0 && doubts.isLineSound(lay.channel[fellow])
                && room.sensor(lay.channel[fellow]).blockedSinceNs() == Sensor.NEVER);
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
        if (pulse == CupWatch.Pulse.HAND) {
            unforetoldNs = Long.MIN_VALUE;
        }
        if (room.seesApproach()) {
            switch (pulse) {
                case DROP -> {
                    if (!flight.drop(cup.takeDrop(), settledNs, false)) {
                        unforetoldNs = onNs;
                    }
                }
                case LATE_RATTLE -> flight.drop(onNs, settledNs, true);
                case RATTLE, HAND -> { }
            }
        }
    }

    private void drop(long dropNs) {
        long struck = strikes.takeForDrop(dropNs);
        strikes.felt(struck != Sensor.NEVER);
        silence.attempt(Verdict.holedUnseen(struck == Sensor.NEVER ? dropNs : struck, settledNs));
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
}

package org.cupbeam.track;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.rig.Rig;
import org.cupbeam.track.RolledBall.Crossing;

/**
 * Sees balls that are rolled by hand through all beams, to measure the green: one at a time, either way, beside the hole. It
 * tells what the beams said of each, and nothing of what that means.
 *
 * <p>What does not fit one rolling ball begins no roll or ends it: a foot that blocks both beams of a pair, a crossing that
 * comes too soon or too late for the speed at the beam before, a ball that stops on its way or drops. Knows no clock.
 */
public final class RollWatch implements EdgeSink {
    /** Fewer tell nothing of how a ball slows. */
    public static final int BEAMS_MIN = 2;
    private static final double SLOWEST_MM_PER_S = 60;
    /** From beam to beam the mean speed is that at both, but for this share, and for where the beams stand. */
    private static final double SPEED_SHARE = 0.06;
    private static final double PLACES_MM = 8;
    /** A ball that seems to gain more than this was pushed. */
    private static final double GAIN_SHARE = 0.06;

    private final Lay lay;
    private final Room room;
    private final Consumer<RolledBall> sink;
    private final List<Crossing> current = new ArrayList<>();

    /** @param sink is told of each ball once the last beam is clear of it */
    public RollWatch(Rig rig, Consumer<RolledBall> sink) {
        lay = new Lay(rig);
        room = new Room(rig, lay);
        this.sink = sink;
    }

    @Override
    public void edge(int channel, boolean active, long timeNs) {
        advance(timeNs);
        if (room.beamOf(channel) >= 0 || channel == room.cup) {
            room.sensor(channel).edge(active, timeNs);
        }
    }

    /** Settles what is over by this time. */
    public void advance(long timeNs) {
        for (int next = room.nextToClose(); next >= 0 && room.sensor(next).closesNs() <= timeNs; next = room.nextToClose()) {
            Sensor sensor = room.sensor(next);
            if (sensor.close()) {
                if (room.beamOf(next) >= 0) {
                    take(new Crossing(room.beamOf(next), sensor.lastOnNs(), sensor.lastOffNs()));
                } else {
                    current.clear();
                }
            }
        }
    }

    private void take(Crossing crossing) {
        if (!continues(crossing)) {
            current.clear();
            boolean atAnEnd = crossing.beam() == 0 || crossing.beam() == lay.beams - 1;
            if (!atAnEnd || speed(crossing) < SLOWEST_MM_PER_S) {
                return;
            }
        }
        current.add(crossing);
        if (current.size() == lay.beams && lay.beams >= BEAMS_MIN) {
            sink.accept(new RolledBall(current.get(0).beam() == 0, current));
            current.clear();
        }
    }

    private boolean continues(Crossing next) {
        if (current.isEmpty()) {
            return false;
        }
        Crossing last = current.get(current.size() - 1);
        int step = current.get(0).beam() == 0 ? 1 : -1;
        boolean apart = next.onNs() > last.offNs() || lay.overlap(last.beam(), next.beam()) && next.onNs() > last.onNs();
        return next.beam() == last.beam() + step && apart && speed(next) <= speed(last) * (1 + GAIN_SHARE)
                && fits(last, next);
    }

    private boolean fits(Crossing last, Crossing next) {
        double gapMm = Math.abs(lay.positionMm[next.beam()] - lay.positionMm[last.beam()]);
        double mean = gapMm / ((middleNs(next) - middleNs(last)) * 1e-9);
        double expected = (speed(last) + speed(next)) / 2;
        return Math.abs(mean / expected - 1) < SPEED_SHARE + PLACES_MM / gapMm;
    }

    private static double middleNs(Crossing crossing) {
        return crossing.onNs() + (crossing.offNs() - crossing.onNs()) / 2.0;
    }

    private double speed(Crossing crossing) {
        return 2 * lay.halfChordMm[crossing.beam()] / ((crossing.offNs() - crossing.onNs()) * 1e-9);
    }

    /** How much of a ball's way along the line each beam sees, by its place among the rig's, in mm. */
    public List<Double> chordsMm() {
        List<Double> chords = new ArrayList<>();
        for (double half : lay.halfChordMm) {
            chords.add(2 * half);
        }
        return chords;
    }
}

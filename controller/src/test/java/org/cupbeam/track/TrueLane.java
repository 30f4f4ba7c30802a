package org.cupbeam.track;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.IntFunction;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Rig;

/**
 * A lane as it truly is, where its rig file says a little otherwise.
 *
 * @param rigOfBall how the beams and the green are for the how-manieth ball, from 0
 * @param friction  what a ball's friction is as a share of the green's
 * @param late      how late an edge is told
 */
record TrueLane(IntFunction<Rig> rigOfBall, Share friction, Lateness late) {
    private static final double FROM_MM = -3000;
    private static final double APART_S = 20;
    private static final double NEAREST_MM = 200;
    private static final double FARTHEST_MM = 2100;
    /** Spreads finishes evenly, and never the same twice. */
    private static final double GOLDEN = 0.6180339887498949;

    /** One draw for a ball. */
    interface Share {
        double of(Random random);
    }

    /** What a receiver and the wire behind it add to an edge's time. */
    interface Lateness {
        double seconds(Random random, int channel, boolean active);
    }

    static TrueLane of(Rig rig) {
        return new TrueLane(ball -> rig, random -> 1, (random, channel, active) -> 0);
    }

    TrueLane with(Share share) {
        return new TrueLane(rigOfBall, share, late);
    }

    TrueLane with(Lateness lateness) {
        return new TrueLane(rigOfBall, friction, lateness);
    }

    /** The same rig with one of its beams elsewhere, or at another height. */
    static Rig moved(Rig rig, int beam, double alongMm, double upMm) {
        List<Beam> beams = new ArrayList<>(rig.beams());
        Beam was = beams.get(beam);
        beams.set(beam, new Beam(was.channel(), was.positionMm() + alongMm, was.heightMm() + upMm));
        return new Rig(rig.stimpFt(), rig.uphillPercent(), rig.sidePercent(), rig.limitMm(), rig.channels(), beams,
                rig.lampGpio());
    }

    static Rig onGreen(Rig rig, double stimpFt, double uphillPercent) {
        return new Rig(stimpFt, uphillPercent, rig.sidePercent(), rig.limitMm(), rig.channels(), rig.beams(),
                rig.lampGpio());
    }

    /**
     * What the tracker tells of one ball, after others from which the lane could learn.
     *
     * @param said     the rig file's word
     * @param before   how many other putts
     * @param finishMm where the ball truly stops
     * @return null where the rig sees nothing of it
     */
    Attempt told(Rig said, int before, double finishMm, long seed) {
        Random random = new Random(seed);
        Played played = new Played();
        Tracker tracker = new Tracker(said, played);
        for (int ball = 0; ball < before; ball++) {
            double share = ball * GOLDEN % 1;
            putt(tracker, ball, NEAREST_MM + (FARTHEST_MM - NEAREST_MM) * share, random);
        }
        tracker.advance(startNs(before));
        played.attempts.clear();
        putt(tracker, before, finishMm, random);
        tracker.end();
        return played.attempts.isEmpty() ? null : played.only();
    }

    private void putt(Tracker tracker, int number, double finishMm, Random random) {
        Rig rig = rigOfBall.apply(number);
        double slows = FakeBall.decelerationMmPerS2(rig) * friction.of(random);
        double speed = Math.sqrt(2 * slows * (finishMm - FROM_MM));
        FakeBall free = new FakeBall(startNs(number) * 1e-9, FROM_MM, speed, slows, Double.POSITIVE_INFINITY,
                Double.POSITIVE_INFINITY);
        FakeBall ball = free.pickedUpAt(free.stopsS() + 5);
        Tape.of(rig, new Script(rig).rolls(ball)).edges().forEach(edge -> tracker.edge(edge.channel(), edge.active(),
                edge.timeNs() + Math.round(late.seconds(random, edge.channel(), edge.active()) * 1e9)));
    }

    private static long startNs(int ball) {
        return Math.round((1 + APART_S * ball) * 1e9);
    }
}

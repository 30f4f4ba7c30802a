package org.cupbeam.commission;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.cupbeam.commission.ArrayEstimate.Value;
import org.cupbeam.track.RolledBall;
import org.cupbeam.track.RolledBall.Crossing;

/**
 * Places of beams and the green's deceleration from rolled balls, all balls jointly, by Gauss–Newton.
 *
 * <p>What is observable. A ball that slows evenly has x(t) = x₀ + vt − at²/2. Times alone fix no length: places, speeds and
 * decelerations may all be multiplied by one number, and moved along by another, and no time changes. The number comes from
 * the ball itself: it is 42.67 mm across, so its time in a beam gives its speed there in mm/s, less what a beam off its
 * middle sees of it ({@link Chord}); and from any two places that were measured. Where the hole is, no ball beside it tells:
 * one place must be measured from the hole's centre. Balls of different speeds tell a receiver's lag, which is a time, from
 * a chord, which is a length; balls both ways tell the slope from the green, and a late receiver from a place.
 *
 * <p>Unknown are each ball's x₀, v and how far its own a is from the common one; each beam's place, chord, delay, and how much
 * later it clears than blocks; the common a of each way. Each edge is one equation, linear in all of them but for the speed
 * that turns a lag into a length, taken from the round before. Edges weigh less the worse they fit (Student's t with four
 * degrees of freedom), since receivers chatter.
 */
final class ArrayFit {
    private static final double EDGE_SD_S = 30e-6;
    private static final double LIMB_SD_MM = 0.05;
    private static final double LAG_SD_S = 60e-6;
    private static final double LAG_UNIT_S = 1e-4;
    /** Of a ball's own deceleration about the common one, as a share: turf is not even, and balls are not alike. */
    private static final double BALL_SD_SHARE = 0.005;
    /** A green of 10 ft, give or take any other. */
    private static final double SLOWS_MM_PER_S2 = 550;
    private static final double SLOWS_SD = 2000;
    private static final double TAILS = 4;
    private static final int ROUNDS = 25;
    private static final int OF_BALL = 3;
    private static final int OF_BEAM = 4;

    private final List<RolledBall> balls;
    private final List<Place> places;
    private final List<Chord> chords;
    private final int beams;
    private final double[] weights;
    private double[] solved;
    private Normal normal;

    /** @param places as measured, at least one of them @param chords of each beam */
    ArrayFit(List<RolledBall> balls, List<Place> places, List<Chord> chords) {
        this.balls = balls;
        this.places = places;
        this.chords = chords;
        beams = places.size();
        weights = new double[2 * beams * balls.size()];
        Arrays.fill(weights, 1);
    }

    /** @throws ArithmeticException where no place was measured, or there is no ball */
    ArrayEstimate estimate() {
        for (int round = 0; round < ROUNDS; round++) {
            normal = new Normal(OF_BALL * balls.size() + OF_BEAM * beams + 2);
            priors();
            eachEdge((edge, index, row, observed, sd) -> normal.add(index, row, observed, sd / Math.sqrt(weights[edge])));
            solved = normal.solve();
            eachEdge((edge, index, row, observed, sd) -> weights[edge] = (TAILS + 1) / (TAILS + square(off(index, row, observed) / sd)));
        }
        double[] squares = {0};
        eachEdge((edge, index, row, observed, sd) -> squares[0] += weights[edge] * square(off(index, row, observed) / sd));
        double scale = Math.sqrt(Math.max(1, squares[0] / Math.max(1, weights.length - OF_BALL * balls.size())));
        return told(scale);
    }

    private void priors() {
        for (int i = 0; i < balls.size(); i++) {
            normal.add(new int[] {OF_BALL * i + 2}, new double[] {1}, 0, BALL_SD_SHARE * slows(i));
        }
        for (int b = 0; b < beams; b++) {
            normal.add(new int[] {place(b)}, new double[] {1}, places.get(b).mm(), places.get(b).sdMm());
            normal.add(new int[] {place(b) + 1}, new double[] {1}, 0, chords.get(b).sdMm());
            normal.add(new int[] {place(b) + 2}, new double[] {1}, 0, LAG_SD_S / LAG_UNIT_S);
            normal.add(new int[] {place(b) + 3}, new double[] {1}, 0, LAG_SD_S / LAG_UNIT_S);
        }
        normal.add(new int[] {common(true)}, new double[] {1}, SLOWS_MM_PER_S2, SLOWS_SD);
        normal.add(new int[] {common(false)}, new double[] {1}, SLOWS_MM_PER_S2, SLOWS_SD);
    }

    private double slows(int ball) {
        return solved == null ? SLOWS_MM_PER_S2 : Math.max(50, Math.abs(solved[common(balls.get(ball).toward())]));
    }

    private interface Edge {
        void take(int edge, int[] index, double[] row, double observedMm, double sdMm);
    }

    private void eachEdge(Edge each) {
        int edge = 0;
        for (int i = 0; i < balls.size(); i++) {
            RolledBall ball = balls.get(i);
            for (Crossing crossing : ball.crossings()) {
                Chord chord = chords.get(crossing.beam());
                double measured = chord.mm() / ((crossing.offNs() - crossing.onNs()) * 1e-9);
                for (int limb = -1; limb <= 1; limb += 2) {
                    double timeS = ((limb < 0 ? crossing.onNs() : crossing.offNs()) - ball.timeNs()) * 1e-9;
                    double speed = solved == null ? measured : Math.max(0, speed(i, timeS));
                    double way = ball.toward() ? 1 : -1;
                    double halfSquare = -timeS * timeS / 2;
                    int[] index = {OF_BALL * i, OF_BALL * i + 1, OF_BALL * i + 2, common(ball.toward()), place(crossing.beam()),
                        place(crossing.beam()) + 1, place(crossing.beam()) + 2, place(crossing.beam()) + 3};
                    double[] row = {1, timeS, halfSquare, halfSquare, -way, -limb / 2.0, -speed * LAG_UNIT_S,
                        limb < 0 ? 0 : -speed * LAG_UNIT_S};
                    each.take(edge++, index, row, limb * chord.mm() / 2, Math.hypot(speed * EDGE_SD_S, LIMB_SD_MM));
                }
            }
        }
    }

    private double speed(int ball, double timeS) {
        return solved[OF_BALL * ball + 1]
                - (solved[OF_BALL * ball + 2] + solved[common(balls.get(ball).toward())]) * timeS;
    }

    private double off(int[] index, double[] row, double observed) {
        double sum = -observed;
        for (int k = 0; k < index.length; k++) {
            sum += row[k] * solved[index[k]];
        }
        return sum;
    }

    private int place(int beam) {
        return OF_BALL * balls.size() + OF_BEAM * beam;
    }

    private int common(boolean toward) {
        return OF_BALL * balls.size() + OF_BEAM * beams + (toward ? 0 : 1);
    }

    private ArrayEstimate told(double scale) {
        List<Double> at = new ArrayList<>();
        List<Double> sds = new ArrayList<>();
        List<Double> spacings = new ArrayList<>();
        for (int b = 0; b < beams; b++) {
            at.add(solved[place(b)]);
            sds.add(sd(scale, new int[] {place(b)}, 1));
            spacings.add(b == 0 ? 0.0 : sd(scale, new int[] {place(b), place(0)}, 1, -1));
        }
        boolean toward = balls.stream().anyMatch(RolledBall::toward);
        boolean back = balls.stream().anyMatch(each -> !each.toward());
        int a = common(true);
        int b = common(false);
        return new ArrayEstimate(balls.size(), at, sds, spacings,
                new Value(solved[a], toward ? sd(scale, new int[] {a}, 1) : 0),
                new Value(solved[b], back ? sd(scale, new int[] {b}, 1) : 0),
                new Value((solved[a] + solved[b]) / 2, sd(scale, new int[] {a, b}, 0.5, 0.5)));
    }

    private double sd(double scale, int[] index, double... weight) {
        double[] column = normal.covariance(index, weight);
        double variance = 0;
        for (int k = 0; k < index.length; k++) {
            variance += weight[k] * column[index[k]];
        }
        return scale * Math.sqrt(Math.max(0, variance));
    }

    private static double square(double value) {
        return value * value;
    }
}

package org.cupbeam.commission;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.cupbeam.edge.practice.PracticeRigs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rolled balls on simulated lanes whose truth is known: what the estimate says, and how well it knows itself. */
class ArrayFitTest {
    private static final long SEED = Long.getLong("cupbeam.seed", System.nanoTime());
    private static final int LANES = Integer.getInteger("cupbeam.lanes", 40);

    @ParameterizedTest
    @CsvSource({"STANDARD,6", "STANDARD,12", "FULL,6", "FULL,12"})
    void placesAndSpeedLieWithinWhatTheEstimateSaysOfItself(PracticeRigs kind, int rolls) {
        List<Double> spacing = new ArrayList<>();
        List<Double> said = new ArrayList<>();
        List<Double> stimp = new ArrayList<>();
        int[] spacings = new int[2];
        int[] places = new int[2];
        int[] speeds = new int[2];
        int[] slopes = new int[2];
        for (int lane = 0; lane < LANES; lane++) {
            RolledLane rolled = new RolledLane(SEED + lane, kind, rolls, 1);
            ArrayEstimate is = rolled.estimate();
            List<Double> truth = rolled.bench.placesMm();
            for (int b = 0; b < truth.size(); b++) {
                double off = is.placesMm().get(b) - truth.get(b);
                count(places, off / is.placeSdsMm().get(b));
                if (b > 0) {
                    double apart = off - (is.placesMm().get(0) - truth.get(0));
                    count(spacings, apart / is.spacingSdsMm().get(b));
                    spacing.add(Math.abs(apart));
                    said.add(1.96 * is.spacingSdsMm().get(b));
                }
            }
            ArrayEstimate.Value speed = is.stimpFt(0);
            stimp.add(Math.abs(speed.is() - rolled.bench.stimpFt()));
            count(speeds, (speed.is() - rolled.bench.stimpFt()) / speed.sd());
            count(slopes, (is.uphillPercent().is() - rolled.uphillPercent) / is.uphillPercent().sd());
        }
        System.out.printf(Locale.ROOT, "%s, %d balls, %d lanes, seed %d: spacing off %.2f mm (median), %.2f (90 %%), said ±%.2f (median);"
                + " green off %.2f ft (median), %.2f (90 %%); held: spacings %.1f %%, places %.1f %%, speeds %.1f %%, slopes %.1f %%%n",
                kind, rolls, LANES, SEED, at(spacing, 0.5), at(spacing, 0.9), at(said, 0.5), at(stimp, 0.5), at(stimp, 0.9),
                share(spacings), share(places), share(speeds), share(slopes));

        assertThat(share(spacings)).as("spacings held, seed %d", SEED).isBetween(86.0, 100.0);
        assertThat(share(places)).as("places held, seed %d", SEED).isBetween(86.0, 100.0);
    }

    @ParameterizedTest
    @CsvSource({"STANDARD,6,1", "FULL,8,2", "GATE,6,1"})
    void levenbergAndMarquardtComeToTheSame(PracticeRigs kind, int rolls, int measured) {
        RolledLane rolled = new RolledLane(SEED, kind, rolls, measured);
        ArrayEstimate ours = rolled.estimate();
        double[] theirs = new SecondOpinion(rolled.balls, rolled.places, rolled.chords).solve();

        for (int b = 0; b < ours.placesMm().size(); b++) {
            assertThat(theirs[b]).as("beam %d, seed %d", b, SEED).isCloseTo(ours.placesMm().get(b), within(0.05 * ours.placeSdsMm().get(b)));
        }
        assertThat(theirs[theirs.length - 2]).as("toward, seed %d", SEED)
                .isCloseTo(ours.toward().is(), within(0.1 * ours.toward().sd()));
        assertThat(theirs[theirs.length - 1]).as("back, seed %d", SEED).isCloseTo(ours.back().is(), within(0.1 * ours.back().sd()));
    }

    @Test
    void noMeasuredPlaceIsNoPlaceAtAll() {
        RolledLane rolled = new RolledLane(SEED, PracticeRigs.STANDARD, 4, 0);

        assertThat(rolled.estimate().placeSdsMm()).as("they may be anywhere").allMatch(sd -> sd > 1e4);
        assertThat(rolled.estimate().spacingSdsMm()).as("and yet their spacing is known").allMatch(sd -> sd < 5);
    }

    @Test
    void aSpacingThatWasMeasuredMakesTheScaleBetter() {
        RolledLane rolled = new RolledLane(SEED, PracticeRigs.STANDARD, 6, 1);
        double alone = rolled.estimate().spacingSdsMm().get(3);
        rolled.places.set(3, new Place(rolled.bench.placesMm().get(3), 0.3));

        assertThat(rolled.estimate().spacingSdsMm().get(3)).isLessThan(alone);
        assertThat(rolled.estimate().spacingSdsMm().get(2)).isLessThan(0.9 * alone);
    }

    private static void count(int[] held, double sds) {
        held[Math.abs(sds) < 1.96 ? 0 : 1]++;
    }

    private static double share(int[] held) {
        return 100.0 * held[0] / (held[0] + held[1]);
    }

    private static double at(List<Double> values, double share) {
        List<Double> sorted = new ArrayList<>(values);
        Collections.sort(sorted);
        return sorted.get((int) (share * (sorted.size() - 1)));
    }
}

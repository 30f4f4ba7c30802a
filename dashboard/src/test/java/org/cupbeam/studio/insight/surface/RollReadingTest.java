package org.cupbeam.studio.insight.surface;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.cupbeam.edge.practice.PracticeLane;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.edge.practice.PracticeRolls;
import org.cupbeam.edge.practice.Sensing;
import org.cupbeam.edge.practice.Surface;
import org.cupbeam.rig.Rig;
import org.cupbeam.track.RollWatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rolls on the simulated green, which knows the truth and shares no formula with the fit, seen through real edges. */
class RollReadingTest {
    private static final int LANES = 400;

    /**
     * Sensors and greens as usual: beams 1 mm off, receivers that lag by 40 µs, jitter of 25 µs, balls that differ by 0.4 %.
     */
    @ParameterizedTest
    @CsvSource({"STANDARD,10,1.5,0.5,3,0.35", "FULL,11,0,0,3,0.35", "STANDARD,9,-2,0,5,0.3", "GATE,10,0.5,0,4,3"})
    void theIntervalHoldsTheTrueSpeedAndSlopeAsOftenAsItSays(PracticeRigs kind, double stimpFt, double uphill, double side,
                                                            int balls, double widestFt) {
        Rig rig = kind.on(stimpFt, uphill, side);
        int speeds = 0;
        int slopes = 0;
        double width = 0;
        double bias = 0;
        for (long seed = 1; seed <= LANES; seed++) {
            PracticeRolls practice = new PracticeRolls(seed, PracticeLane.clean(rig).with(Surface.usual()).with(Sensing.usual()));
            RollTest test = RollReading.of(rolled(rig, practice, balls)).test().orElseThrow();
            speeds += test.stimpFt().holds(practice.stimpFt()) ? 1 : 0;
            slopes += test.uphillPercent().holds(uphill) ? 1 : 0;
            width += test.stimpFt().width() / 2 / LANES;
            bias += (test.stimpFt().value() - practice.stimpFt()) / LANES;
        }
        System.out.printf("%s rig, %.0f ft, %.1f %%, %d balls each way, seeds 1 to %d: %.3f of the intervals hold the speed, "
                + "%.3f the slope; +-%.3f ft, on average %+.4f ft off%n", kind, stimpFt, uphill, balls, LANES, (double) speeds / LANES,
                (double) slopes / LANES, width, bias);
        assertThat((double) speeds / LANES).isBetween(0.93, 0.995);
        assertThat((double) slopes / LANES).isBetween(0.93, 1.0);
        assertThat(width).isLessThan(widestFt);
    }

    @Test
    void onAGreenAndBetweenBeamsAsTheRigFileSaysTheSpeedIsExact() {
        Rig rig = PracticeRigs.STANDARD.on(10, 2, 0);
        PracticeRolls practice = new PracticeRolls(1, PracticeLane.clean(rig));
        RollReading reading = RollReading.of(rolled(rig, practice, 3));
        // Brede's mean of two ways is the reading over the slope's cosine (computed independently: 10.002 ft at 2 %).
        assertThat(reading.test().orElseThrow().stimpFt().value()).isCloseTo(10.002, within(0.01));
        assertThat(reading.test().orElseThrow().uphillPercent().value()).isCloseTo(2, within(0.01));
        assertThat(reading.scatterFt()).isLessThan(0.01);
    }

    @Test
    void tellsWhichBallsAreStillToBeRolledAndHowManyMoreWouldHelp() {
        Rig rig = PracticeRigs.STANDARD.level();
        PracticeRolls practice = new PracticeRolls(2, PracticeLane.clean(rig).with(Surface.usual()).with(Sensing.usual()));
        Rolled all = rolled(rig, practice, 3);
        RollReading two = RollReading.of(new Rolled(all.beams(), all.balls().subList(0, 2)));
        assertThat(two.test()).isEmpty();
        assertThat(two.missing(true)).isEqualTo(1);
        assertThat(two.missing(false)).isEqualTo(3);
        assertThat(two.slowed()).hasSize(2);
        assertThat(RollReading.of(new Rolled(all.beams(), List.of())).more()).contains(3);

        RollTest test = RollReading.of(all).test().orElseThrow();
        assertThat(sure(test, 0.01, 0.02).moreInWords()).startsWith("That is known well enough");
        RollTest vague = RollTest.of(List.of(500.0, 540.0, 560.0), List.of(510.0, 530.0, 560.0)).orElseThrow();
        assertThat(sure(vague, 0.25, 0.02).more()).hasValueSatisfying(more -> assertThat(more).isBetween(1, 6));
        assertThat(sure(vague, 0.25, 0.02).moreInWords()).matches("About \\d more balls? each way would make it sure to 0.25 ft\\.");
        assertThat(sure(vague, 0.05, 0.5).moreInWords()).startsWith("More balls would not make it much surer");
        assertThat(sure(vague, 3, 0.02).moreInWords()).startsWith("Single balls differ too much");
    }

    private static RollReading sure(RollTest test, double scatterFt, double sharedFt) {
        return new RollReading(3, 3, List.of(), Optional.of(test), scatterFt, sharedFt);
    }

    private static Rolled rolled(Rig rig, PracticeRolls practice, int balls) {
        List<Rolled.Ball> rolls = new ArrayList<>();
        RollWatch watch = new RollWatch(rig, ball -> rolls.add(new Rolled.Ball(ball.toward(), ball.crossings().stream()
                .map(each -> new Rolled.Crossing(each.beam(), (each.onNs() - ball.timeNs()) * 1e-9,
                        (each.offNs() - ball.timeNs()) * 1e-9)).toList())));
        for (int i = 0; i < 2 * balls; i++) {
            watch.advance(practice.roll(i < balls, watch));
        }
        assertThat(rolls).as("every ball was seen, and nothing else").hasSize(2 * balls);
        List<Double> chords = watch.chordsMm();
        return new Rolled(IntStream.range(0, chords.size()).mapToObj(i ->
                new Rolled.Beam(rig.beams().get(i).positionMm(), chords.get(i))).toList(), rolls);
    }
}

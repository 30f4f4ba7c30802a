package org.cupbeam.studio.insight.surface;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.cupbeam.green.GreenSpeed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GreenSpeedOfTheDayTest {
    private static final long MINUTE_MS = 60_000;

    @Test
    void theLastReadingStandsAndADriftIsSaid() {
        List<Reading> readings = new ArrayList<>();
        for (int minute = 0; minute < 480; minute += 3) {
            readings.add(new Reading(minute * MINUTE_MS, 10 - minute / 600.0, 0.08));
        }
        DaySpeed day = DaySpeed.of(readings, ZoneOffset.UTC).orElseThrow();
        assertThat(day.hours()).isEqualTo(8);
        assertThat(day.driftFt().orElseThrow().value()).isCloseTo(-0.7, within(0.01));
        assertThat(day.inWords()).isEqualTo("The green runs 9.2 ft (9.0 to 9.4), and has become slower by 0.7 ft over the day.");
        assertThat(day.alert(9.5, 11)).contains("The green runs 9.2 ft, slower than the 9.5 to 11.0 ft wanted.");
        assertThat(day.alert(9, 11)).isEmpty();
        assertThat(day.outside(9.205, 11)).isCloseTo(0.5, within(0.1));
    }

    @Test
    void aSteadyGreenIsSaidToBeSteadyAndAShortDayNothing() {
        DaySpeed steady = DaySpeed.of(List.of(new Reading(0, 10, 0.1), new Reading(70 * MINUTE_MS, 10.1, 0.1),
                new Reading(140 * MINUTE_MS, 10, 0.1)), ZoneOffset.UTC).orElseThrow();
        assertThat(steady.inWords()).isEqualTo("The green runs 10.0 ft (9.8 to 10.2), steady over the day.");
        assertThat(DaySpeed.of(List.of(new Reading(0, 10, 0.1)), ZoneOffset.UTC).orElseThrow().inWords()).endsWith("10.2).");
        assertThat(DaySpeed.of(List.of(), ZoneOffset.UTC)).isEmpty();
    }

    /** In India hours begin at half past by UTC: these three lie in three hours there, and in two by UTC. */
    @Test
    void hoursAreThoseOfTheStudiosClock() {
        List<Reading> readings = readings("2026-11-25T09:10:00Z", "2026-11-25T09:40:00Z", "2026-11-25T10:40:00Z");
        assertThat(DaySpeed.of(readings, ZoneId.of("Asia/Kolkata")).orElseThrow().hours()).isEqualTo(3);
        assertThat(DaySpeed.of(readings, ZoneOffset.UTC).orElseThrow().hours()).isEqualTo(2);
    }

    /** On 25 October 2026 Berlin's clocks went from 3:00 back to 2:00, on 29 March from 2:00 on to 3:00. */
    @Test
    void theHourThatComesTwiceIsTwoAndTheOneThatIsLeftOutIsNone() {
        ZoneId berlin = ZoneId.of("Europe/Berlin");
        DaySpeed back = DaySpeed.of(readings("2026-10-24T23:30:00Z", "2026-10-25T00:30:00Z", "2026-10-25T01:30:00Z"),
                berlin).orElseThrow();
        assertThat(back.hours()).as("half past one, two, and two again").isEqualTo(3);
        assertThat(back.driftFt().orElseThrow().value()).as("of two hours").isCloseTo(0.2, within(1e-9));
        DaySpeed on = DaySpeed.of(readings("2026-03-29T00:30:00Z", "2026-03-29T01:30:00Z", "2026-03-29T02:30:00Z"),
                berlin).orElseThrow();
        assertThat(on.hours()).as("half past one, three, and four").isEqualTo(3);
        assertThat(on.driftFt().orElseThrow().value()).as("of two hours").isCloseTo(0.2, within(1e-9));
    }

    /** 10 ft, and a tenth more each time. */
    private static List<Reading> readings(String... at) {
        return IntStream.range(0, at.length).mapToObj(i -> new Reading(Instant.parse(at[i]).toEpochMilli(), 10 + i * 0.1, 0.1))
                .toList();
    }

    /**
     * Computed independently (SciPy): 10 ft with friction lightened by the slope's cosine; up, down, and Brede's mean.
     */
    @ParameterizedTest
    @CsvSource({"1,8.868248208,11.464187814,10.000499988", "2,7.967501536,13.431805971,10.001999800",
            "3,7.233783494,16.215388075,10.004498988"})
    void ballsRolledBothWaysTellSpeedAndSlope(double percent, double upFt, double downFt, double levelFt) {
        double up = GreenSpeed.levelDecelerationMmPerS2(upFt);
        double down = GreenSpeed.levelDecelerationMmPerS2(downFt);
        RollTest test = RollTest.of(List.of(up, up, up), List.of(down, down, down)).orElseThrow();
        assertThat(test.stimpFt().value()).isCloseTo(levelFt, within(1e-8));
        assertThat(test.uphillPercent().value()).isCloseTo(percent, within(0.002));
        assertThat(test.together()).isTrue();
        assertThat(test.level()).isFalse();
        assertThat(test.inWords()).isEqualTo("The green runs 10.0 ft (10.0 to 10.0), the line rises " + percent + " %.");
    }

    @Test
    void intervalsHoldTheTruthAsOftenAsTheySay() {
        Random random = new Random(3);
        int held = 0;
        int all = 4000;
        for (int i = 0; i < all; i++) {
            List<Double> up = new ArrayList<>();
            List<Double> down = new ArrayList<>();
            for (int ball = 0; ball < 4; ball++) {
                up.add(GreenSpeed.decelerationMmPerS2(10, 1.5) * (1 + 0.015 * random.nextGaussian()));
                down.add(GreenSpeed.decelerationMmPerS2(10, -1.5) * (1 + 0.015 * random.nextGaussian()));
            }
            held += RollTest.of(up, down).orElseThrow().stimpFt().holds(10) ? 1 : 0;
        }
        System.out.printf("four balls each way, seed 3: %.4f of %d intervals hold the truth%n", (double) held / all, all);
        assertThat((double) held / all).isBetween(0.93, 0.97);
    }

    @Test
    void twoBallsAreTooFewAndScatteredOnesAreSaidToBe() {
        assertThat(RollTest.of(List.of(500.0, 500.0), List.of(500.0, 500.0, 500.0))).isEmpty();
        RollTest test = RollTest.of(List.of(500.0, 560.0, 540.0), List.of(548.0, 548.0, 548.0)).orElseThrow();
        assertThat(test.together()).isFalse();
        assertThat(test.level()).isTrue();
        assertThat(test.inWords()).endsWith("roll more of them.");
    }
}

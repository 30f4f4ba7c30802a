package org.cupbeam.edge.practice;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import org.cupbeam.edge.practice.Pulses.Pulse;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.Test;

/** What is no putt must be tellable from one: each visitor, a hundred times. */
class VisitorsTest {
    private static final int TIMES = 100;
    private static final Turf TURF = Turf.of(10, 0, 0, 0.4);
    /** A ball's length over a pair's. */
    private static final double BALL_PER_PAIR = 42.67 / 60;
    private static final Rig RIG = PracticeRigs.FULL.level();

    @Test
    void aShoeBlocksBothBeamsOfAPairTogether() {
        eachTime((sensors, dice) -> new Feet(sensors, dice).step(sensors.pairs().get(0), 0), pulses -> {
            List<Pulse> long1 = pulses.on("before-1").stream().filter(p -> p.lengthMs() > 40).toList();
            List<Pulse> long2 = pulses.on("before-2").stream().filter(p -> p.lengthMs() > 40).toList();
            assertThat(long1).isNotEmpty().allMatch(one -> long2.stream().anyMatch(one::overlaps));
            assertThat(long2).isNotEmpty().allMatch(two -> long1.stream().anyMatch(two::overlaps));
        });
    }

    @Test
    void aBallRolledBackComesInTheWrongOrder() {
        eachTime((sensors, dice) -> strays(sensors, dice).back(TURF, 0), pulses -> {
            assertThat(pulses.all().get(0).channel()).isEqualTo("past-2");
            for (String pair : List.of("past", "behind", "before")) {
                List<Pulse> first = pulses.on(pair + "-1");
                assertThat(pulses.on(pair + "-2").size()).isGreaterThanOrEqualTo(first.size());
                if (!first.isEmpty()) {
                    assertThat(first.get(0).fromNs()).isGreaterThan(pulses.on(pair + "-2").get(0).fromNs());
                }
            }
        });
    }

    @Test
    void aBallRolledOnFromTheHoleIsNotSeenBeforeIt() {
        eachTime((sensors, dice) -> strays(sensors, dice).forward(TURF, 0), pulses -> {
            assertThat(pulses.on("before-1")).isEmpty();
            assertThat(pulses.on("before-2")).isEmpty();
            assertThat(pulses.on("behind-1")).isNotEmpty();
        });
    }

    @Test
    void aBallRolledOnFromTheHoleIsOnlyPlayedWhereARigCanTell() {
        assertThat(strays(sensors(PracticeRigs.STANDARD.level()), new Dice(1)).canTellForward()).isTrue();
        assertThat(strays(sensors(PracticeRigs.GATE.level()), new Dice(1)).canTellForward()).isFalse();
    }

    @Test
    void aWaveIsAsLongAsNoBallOrTooShortForOneThatStops() {
        eachTime((sensors, dice) -> new Hands(sensors, dice).wave(sensors.pairs().get(2), 0), pulses -> {
            List<Pulse> one = pulses.on("past-1");
            List<Pulse> two = pulses.on("past-2");
            if (one.isEmpty() || two.isEmpty()) {
                assertThat(pulses.all()).allMatch(pulse -> pulse.lengthMs() <= 101);
            } else {
                double apartMs = Math.abs(two.get(0).fromNs() - one.get(0).fromNs()) / 1e6;
                double share = one.get(0).lengthMs() / apartMs;
                assertThat(Math.abs(share - BALL_PER_PAIR)).isGreaterThan(0.2);
            }
        });
    }

    @Test
    void aHandInTheCupStaysLongerThanABallFalls() {
        eachTime((sensors, dice) -> new Hands(sensors, dice).intoCup(0),
                pulses -> assertThat(pulses.all().get(0).lengthMs()).isGreaterThan(250));
    }

    @Test
    void somethingSetDownOnTheStrikeSensorLastsLongerThanAStrike() {
        eachTime((sensors, dice) -> new Hands(sensors, dice).bump(0),
                pulses -> assertThat(pulses.on("strike")).hasSize(1).allMatch(pulse -> pulse.lengthMs() > 14));
    }

    private static StrayBalls strays(Sensors sensors, Dice dice) {
        return new StrayBalls(sensors, new Hands(sensors, dice), dice);
    }

    private static Sensors sensors(Rig rig) {
        return new Sensors(PracticeLane.clean(rig), new Dice(1));
    }

    private static void eachTime(BiConsumer<Sensors, Dice> visitor, Consumer<Pulses> check) {
        for (int seed = 0; seed < TIMES; seed++) {
            Sensors sensors = sensors(RIG);
            visitor.accept(sensors, new Dice(seed));
            Pulses pulses = new Pulses(RIG);
            sensors.wires().play(Long.MAX_VALUE, pulses);
            assertThat(pulses.allOver()).as("seed %s", seed).isTrue();
            check.accept(pulses);
        }
    }
}

package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class HabitTest {
    private final Habit habit = new Habit(2500, 0.7, 0.02);

    @Test
    void beforeAnythingWasSeenTheGuessDecidesBroadly() {
        assertThat(habit.likelihood(2500)).isGreaterThan(habit.likelihood(1800)).isGreaterThan(habit.likelihood(3500));
        assertThat(habit.likelihood(1800)).isGreaterThan(0.5 * habit.likelihood(2500));
        assertThat(habit.likelihood(20_000)).isLessThan(0.05 * habit.likelihood(2500)).isPositive();
    }

    @Test
    void halfAndDoubleTheGuessAreEquallyLikely() {
        assertThat(habit.likelihood(1250) / habit.likelihood(5000)).isBetween(1 - 1e-12, 1 + 1e-12);
    }

    @Test
    void whatWasSeenOftenIsLikelierThanItsNeighbourhood() {
        for (int i = 0; i < 5; i++) {
            habit.saw(3000);
        }

        assertThat(habit.likelihood(3010)).isGreaterThan(10 * habit.likelihood(3300));
        assertThat(habit.likelihood(3300)).as("what has not been seen stays possible").isPositive();
    }

    @Test
    void aNewHabitReplacesTheOld() {
        for (int i = 0; i < 100; i++) {
            habit.saw(1000);
        }
        for (int i = 0; i < 64; i++) {
            habit.saw(4000);
        }

        assertThat(habit.likelihood(4000)).isGreaterThan(100 * habit.likelihood(1000));
    }
}

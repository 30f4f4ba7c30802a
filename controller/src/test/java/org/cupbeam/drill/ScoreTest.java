package org.cupbeam.drill;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class ScoreTest {
    @Test
    void moreStationsClearedBeatFewerAttempts() {
        assertThat(new Score(3, 30, 900)).isLessThan(new Score(2, 2, 0));
    }

    @Test
    void atEqualStationsFewerAttemptsWin() {
        assertThat(new Score(3, 4, 900)).isLessThan(new Score(3, 5, 10));
    }

    @Test
    void atEqualAttemptsTheNearerMissesWin() {
        assertThat(new Score(3, 4, 200)).isLessThan(new Score(3, 4, 200.1));
        assertThat(new Score(3, 4, 200)).isEqualByComparingTo(new Score(3, 4, 200));
    }

    @Test
    void missesOnBothSidesOfTheHoleCountByTheirDistance() {
        assertThat(meanOf(Putt.missedAt(-100), Putt.missedAt(300), Putt.sunk())).isEqualTo(200);
    }

    @Test
    void aMissWithoutAFinishDoesNotCountInTheMean() {
        assertThat(meanOf(Putt.missedAt(-100), Putt.missed())).isEqualTo(100);
    }

    @Test
    void noMissIsBestAndMissesWithoutAnyFinishComeLast() {
        assertThat(meanOf(Putt.sunk())).isZero();
        assertThat(meanOf(Putt.missed(), Putt.sunk())).isInfinite();
        assertThat(meanOf(new Putt(false, OptionalDouble.empty(), OptionalDouble.of(2000)))).isInfinite();
    }

    @Property(tries = 200)
    void theOrderOfMissesDoesNotChangeTheMean(
            @ForAll @Size(min = 1, max = 30) List<@DoubleRange(min = -9000, max = 9000) Double> finishes) {
        Tally forth = Tally.NONE;
        Tally back = Tally.NONE;
        for (int i = 0; i < finishes.size(); i++) {
            forth = forth.plus(Putt.missedAt(finishes.get(i)));
            back = back.plus(Putt.missedAt(finishes.get(finishes.size() - 1 - i)));
        }
        assertThat(forth).isEqualTo(back);
    }

    private static double meanOf(Putt... putts) {
        Tally tally = Tally.NONE;
        for (Putt putt : putts) {
            tally = tally.plus(putt);
        }
        return tally.meanFinishMm();
    }
}

package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class StrikesTest {
    private static final long MS = 1_000_000;
    private static final long S = 1_000_000_000;
    private static final double SLOWS = 548.64;

    private final Strikes strikes = new Strikes();

    @Test
    void echoesOfAStrikeAreNotStrikes() {
        strike(1000);
        strike(1030);
        strike(1110);

        assertThat(strikes.count()).isOne();
        assertThat(strikes.oldestNs()).isEqualTo(S);
        strike(2000);
        assertThat(strikes.count()).isEqualTo(2);
    }

    @Test
    void somethingSetDownOnTheSensorIsNoStrike() {
        strikes.pulse(S, S + 300 * MS);

        assertThat(strikes.count()).isZero();
        assertThat(strikes.oldestNs()).isEqualTo(Sensor.NEVER);
    }

    @Test
    void thoseThatWaitAreKeptInOrderOfTimeHoweverTheyCome() {
        strike(3000);
        strikes.giveBack(S);
        strikes.giveBack(Sensor.NEVER);
        strikes.giveBack(2 * S);

        assertThat(strikes.takeOldest()).isEqualTo(S);
        assertThat(strikes.takeOldest()).isEqualTo(2 * S);
        assertThat(strikes.takeOldest()).isEqualTo(3 * S);
        assertThat(strikes.count()).isZero();
    }

    @Test
    void ofTooManyTheOldestIsForgotten() {
        for (int i = 1; i <= 20; i++) {
            strike(1000L * i);
        }

        assertThat(strikes.count()).isEqualTo(16);
        assertThat(strikes.oldestNs()).isEqualTo(5 * S);
    }

    @Test
    void aBallAtABeamMeetsTheStrikeThatWouldHaveSentItThere() {
        strike(1000);

        assertThat(takeFor(3.0)).isEqualTo(S);
        assertThat(strikes.count()).isZero();
        assertThat(takeFor(3.0)).as("taken already").isEqualTo(Sensor.NEVER);
    }

    @Test
    void aStrikeThatComesAfterTheBallOrTooFarOrNearBeforeItIsNotItsOwn() {
        strike(3000);
        assertThat(strikes.takeFor(2 * S, 1000, SLOWS)).as("not yet struck").isEqualTo(Sensor.NEVER);
        assertThat(strikes.takeFor(3 * S + 100 * MS, 1000, SLOWS)).as("10 cm away").isEqualTo(Sensor.NEVER);
        assertThat(strikes.takeFor(9 * S, 1000, SLOWS)).as("16 m away").isEqualTo(Sensor.NEVER);
        assertThat(strikes.count()).isOne();
    }

    @Test
    void ofTwoStrikesThatWaitTheOneAtTheUsualDistanceIsMeant() {
        for (int i = 0; i < 4; i++) {
            strike(10_000L * (i + 1));
            takeFor(10 * (i + 1) + 1.6);
        }
        strike(100_000);
        strike(100_900);

        assertThat(takeFor(101.6)).isEqualTo(100 * S);
        strikes.giveBack(100 * S);
        assertThat(takeFor(102.5)).isEqualTo(100 * S + 900 * MS);
    }

    @Test
    void aDropMeetsAStrikeFromLongEnoughBefore() {
        strike(1000);

        assertThat(strikes.takeForDrop(S + 200 * MS)).isEqualTo(Sensor.NEVER);
        assertThat(strikes.takeForDrop(3 * S)).isEqualTo(S);
    }

    @Test
    void ofTwoStrikesADropTakesTheOneAsLongAgoAsUsual() {
        for (int i = 0; i < 4; i++) {
            strike(10_000L * (i + 1));
            strikes.takeForDrop(10 * S * (i + 1) + 1800 * MS);
        }
        strike(100_000);
        strike(101_000);

        assertThat(strikes.takeForDrop(101 * S + 850 * MS)).isEqualTo(100 * S);
    }

    @Test
    void theSensorIsTrustedOnceItHasFeltBallAfterBallAndDoubtedWhenItMissesSome() {
        assertThat(strikes.isTrusted()).isFalse();
        for (int i = 0; i < 20; i++) {
            strikes.felt(true);
        }
        assertThat(strikes.isTrusted()).isTrue();
        for (int i = 0; i < 3; i++) {
            strikes.felt(false);
        }
        assertThat(strikes.isTrusted()).isFalse();
    }

    /** Of a ball that is at a beam then with 1 m/s. */
    private long takeFor(double atS) {
        return strikes.takeFor(Math.round(atS * 1e9), 1000, SLOWS);
    }

    private void strike(long atMs) {
        strikes.pulse(atMs * MS, (atMs + 2) * MS);
    }
}

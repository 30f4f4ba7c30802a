package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.cupbeam.rig.Channel.Kind;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Any set of beams is a rig. */
class OddRigsTest {

    @ParameterizedTest
    @ValueSource(doubles = {-250, -200, -100, 50, 300})
    void oneBeamAloneGivesAFinish(double finishMm) {
        Rig before = new RigSketch().beam(-300, 21).rig();
        Rig past = new RigSketch().beam(900, 21).rig();

        isFound(finishMm, new Script(before).rolls(FakeBall.stoppingAt(before, 1, -3000, finishMm)).played());
        isFound(finishMm + 1200, new Script(past).rolls(FakeBall.stoppingAt(past, 1, -3000, finishMm + 1200)).played());
    }

    @Test
    void oneBeamAndACup() {
        Rig rig = new RigSketch().single(Kind.CUP).beam(-300, 21).rig();
        Script script = new Script(rig).rolls(FakeBall.holedFor(rig, 1, -3000, 400))
                .rolls(FakeBall.stoppingAt(rig, 20, -3000, 200)).drops(40).hand(50, 1);

        Played played = script.played();

        assertThat(played.attempts).hasSize(2);
        assertThat(played.attempts.get(0).holed()).isTrue();
        assertThat(played.attempts.get(1).finishMm()).isCloseTo(200, within(20.0));
    }

    @Test
    void aCupAloneCountsDrops() {
        Rig rig = new RigSketch().single(Kind.CUP).rig();

        Played played = new Script(rig).drops(2).hand(4, 1).drops(9).played();

        assertThat(played.attempts).hasSize(2).allMatch(Attempt::holed);
        assertThat(new Tracker(rig, played).unseenMm()).isNaN();
    }

    @Test
    void aCupAndAStrikeSensorCountEveryPutt() {
        Rig rig = new RigSketch().single(Kind.CUP).single(Kind.STRIKE).rig();

        Played played = new Script(rig).putts(FakeBall.holedFor(rig, 1, -3000, 400))
                .putts(FakeBall.stoppingAt(rig, 20, -3000, 200)).played();

        assertThat(played.attempts).extracting(Attempt::holed).containsExactly(true, false);
        assertThat(played.attempts.get(1).betweenHighMm()).as("nothing would tell how far").isNaN();
    }

    @Test
    void beamsWithoutACup() {
        Rig rig = new RigSketch().pair(-300).pair(900).rig();

        Played played = new Script(rig).rolls(FakeBall.stoppingAt(rig, 1, -3000, 400))
                .rolls(FakeBall.stoppingAt(rig, 20, -3000, 1500)).played();

        assertThat(played.attempts).hasSize(2);
        assertThat(played.attempts.get(0).finishMm()).isCloseTo(400, within(20.0));
        assertThat(played.attempts.get(1).finishMm()).isCloseTo(1500, within(20.0));
    }

    @Test
    void manyBeamsAlongTheLine() {
        Rig rig = new RigSketch().single(Kind.CUP).pair(-1800).pair(-1200).pair(-700).pair(-300).pair(200).pair(600)
                .pair(900).pair(1500).pair(2200).rig();
        double[] finishes = {-1500, -900, -400, 100, 440, 800, 1200, 1900, 2600};
        Script script = new Script(rig);
        for (int i = 0; i < finishes.length; i++) {
            script.rolls(FakeBall.stoppingAt(rig, 1 + 20 * i, -3000, finishes[i]));
        }
        script.rolls(FakeBall.holedFor(rig, 400, -3000, 700));

        Played played = script.played();

        assertThat(played.attempts).hasSize(finishes.length + 1);
        for (int i = 0; i < finishes.length; i++) {
            assertThat(played.attempts.get(i).finishMm()).isCloseTo(finishes[i], within(10.0));
            assertThat(played.attempts.get(i).finishSdMm()).isLessThan(12);
        }
        assertThat(played.attempts.get(finishes.length).holed()).isTrue();
    }

    @Test
    void aPairFarBeforeTheHoleIsStillThisHolesPair() {
        Rig rig = new RigSketch().single(Kind.CUP).pair(-6000).pair(900).rig();

        Played played = new Script(rig).rolls(FakeBall.stoppingAt(rig, 1, -7000, 300))
                .rolls(FakeBall.holedFor(rig, 31, -7000, 600)).rolls(FakeBall.stoppingAt(rig, 61, -7000, 1500)).played();

        assertThat(played.attempts).extracting(Attempt::holed).containsExactly(false, true, false);
        Attempt far = played.attempts.get(0);
        assertThat(far.finishMm()).isCloseTo(300, within(far.finishSdMm()));
        assertThat(300.0).isBetween(far.betweenLowMm(), far.betweenHighMm());
        assertThat(far.finishSdMm()).as("6 m of a green whose speed is known to 2 %").isBetween(80.0, 250.0);
        assertThat(played.attempts.get(2).finishMm()).isCloseTo(1500, within(15.0));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-250, -100, 50, 300})
    void beamsThatStandNearerThanABallIsWide(double finishMm) {
        Rig rig = new RigSketch().single(Kind.CUP).beam(-300, 21).beam(-280, 21).beam(-265, 21).rig();

        isFound(finishMm, new Script(rig).rolls(FakeBall.stoppingAt(rig, 1, -3000, finishMm)).played());
        assertThat(new Script(rig).rolls(FakeBall.holedFor(rig, 1, -3000, 400)).played().only().holed()).isTrue();
    }

    @Test
    void beamsAtAllHeights() {
        Rig rig = new RigSketch().single(Kind.CUP).beam(-300, 2).beam(-240, 40).beam(900, 12).beam(960, 33).rig();

        isFound(400, new Script(rig).rolls(FakeBall.stoppingAt(rig, 1, -3000, 400)).played());
        isFound(1500, new Script(rig).rolls(FakeBall.stoppingAt(rig, 1, -3000, 1500)).played());
    }

    private static void isFound(double finishMm, Played played) {
        Attempt attempt = played.only();
        assertThat(attempt.holed()).isFalse();
        assertThat(attempt.finishMm()).isCloseTo(finishMm, within(attempt.finishSdMm()));
        assertThat(finishMm).isBetween(attempt.betweenLowMm(), attempt.betweenHighMm());
        assertThat(attempt.finishSdMm()).isLessThan(25);
    }
}

package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.rig.Channel.Kind;
import org.cupbeam.rig.Rig;
import org.cupbeam.track.TrackSink.Gesture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A sensor whose word does not count makes no attempts, and its silence says nothing. */
class FaultySensorsTest {
    private static final Rig STANDARD = PracticeRigs.STANDARD.level();
    private static final Rig FULL = PracticeRigs.FULL.level();

    @ParameterizedTest
    @ValueSource(strings = {"past-1", "past-2"})
    void withOneBeamBehindTheLimitDarkEveryPuttIsStillToldAsItWas(String beam) {
        Played played = withDark(beam);

        assertThat(played.attempts).extracting(Attempt::holed).containsExactly(true, false, false);
        assertThat(played.attempts.get(1).finishMm()).isCloseTo(300, within(25.0));
        assertThat(played.attempts.get(2).finishMm()).isCloseTo(1300, within(15.0));
        assertThat(played.attempts).noneMatch(Attempt::rim);
    }

    /** Nothing tells a ball from a foot in the one that is left, unless something else sees it too. */
    @ParameterizedTest
    @ValueSource(strings = {"before-1", "before-2"})
    void withOneBeamBeforeTheHoleDarkWhatTheOtherAloneSawIsLeftOut(String beam) {
        Played played = withDark(beam);

        assertThat(played.attempts).extracting(Attempt::holed).containsExactly(true, false);
        assertThat(played.attempts.get(1).finishMm()).isCloseTo(1300, within(15.0));
        assertThat(played.attempts).noneMatch(Attempt::rim);
    }

    private static Played withDark(String beam) {
        return new Script(STANDARD).faulty(beam).blocks(beam, 0.5, 500)
                .rolls(FakeBall.holedFor(STANDARD, 1, -3000, 400))
                .rolls(FakeBall.stoppingAt(STANDARD, 15, -3000, 300))
                .rolls(FakeBall.stoppingAt(STANDARD, 30, -3000, 1300)).played();
    }

    @Test
    void aBeamThatSeesNothingAnyMoreDoesNotSayThatABallStoppedShortOfIt() {
        Played played = deaf("past-1", "past-2").rolls(FakeBall.stoppingAt(STANDARD, 1, -3000, 1300)
                .asFarAs(800)).played();

        Attempt attempt = played.only();
        assertThat(attempt.rim()).isFalse();
        assertThat(1300.0).isBetween(attempt.betweenLowMm(), attempt.betweenHighMm());
    }

    @Test
    void aBeamThatIsBlockedForGoodHoldsNoBall() {
        assertThat(new Script(STANDARD).faulty("before-1").blocks("before-1", 1, 100).played().attempts).isEmpty();
    }

    @Test
    void aBeamThatFlickersForNoReasonIsNoShoesSecondBeam() {
        Script script = new Script(STANDARD).faulty("before-2");
        for (int i = 0; i < 400; i++) {
            script.blocks("before-2", 0.5 + 0.02 * i, 0.51 + 0.02 * i);
        }

        Attempt attempt = script.rolls(FakeBall.stoppingAt(STANDARD, 1, -3000, 1300)).played().only();

        assertThat(attempt.finishMm()).isCloseTo(1300, within(25.0));
    }

    @Test
    void withoutBeamsBeforeTheHoleToRelyOnAnyCleanDropIsAMadePutt() {
        Played played = deaf("before-1", "before-2").drops(2).hand(5, 1)
                .rolls(FakeBall.stoppingAt(STANDARD, 10, -3000, 1300)).played();

        assertThat(played.attempts).extracting(Attempt::holed).containsExactly(true, false);
        assertThat(played.attempts.get(1).finishMm()).isCloseTo(1300, within(20.0));
    }

    @Test
    void aCupThatCannotBeReliedOnDropsNothing() {
        assertThat(new Script(PracticeRigs.GATE.level()).faulty("cup").drops(2).played().attempts).isEmpty();
    }

    @Test
    void aStrikeSensorThatFeelsNothingCostsNoPutt() {
        Played played = new Played();
        Tracker tracker = new Tracker(FULL, played);
        Script felt = new Script(FULL);
        for (int i = 0; i < 15; i++) {
            FakeBall ball = FakeBall.stoppingAt(FULL, 10 * i, -3000, 200 + 10 * i);
            felt.putts(ball.pickedUpAt(ball.stopsS() + 3));
        }
        felt.edges(tracker);
        tracker.advance(160_000_000_000L);
        assertThat(played.attempts).hasSize(15);

        tracker.setUsable(FULL.channelOf(Kind.STRIKE), false);
        new Script(FULL).rolls(FakeBall.stoppingAt(FULL, 170, -3000, 300).pickedUpAt(178))
                .rolls(FakeBall.stoppingAt(FULL, 180, -3000, 1300).pickedUpAt(188))
                .rolls(FakeBall.stoppingAt(FULL, 190, -3000, -300)).edges(tracker);
        tracker.end();

        assertThat(played.attempts).hasSize(18);
    }

    @Test
    void aStrikeSensorThatRattlesMakesNoPutts() {
        Script script = new Script(FULL).faulty("strike");
        for (int i = 0; i < 20; i++) {
            script.struck(i);
        }

        assertThat(script.played().attempts).isEmpty();
    }

    @Test
    void aPedalThatCannotBeReliedOnSaysNothing() {
        Rig rig = PracticeRigs.withPedal(STANDARD);

        assertThat(new Script(rig).faulty("pedal").press(1, 0.1).press(5, 2).played().gestures).isEmpty();
    }

    @Test
    void aSensorThatIsWholeAgainCountsAgain() {
        Rig rig = PracticeRigs.withPedal(STANDARD);
        Played played = new Played();
        Tracker tracker = new Tracker(rig, played);
        int pedal = rig.channelOf(Kind.PEDAL);

        tracker.setUsable(pedal, false);
        new Script(rig).press(1, 0.1).edges(tracker);
        tracker.advance(3_000_000_000L);
        tracker.setUsable(pedal, true);
        new Script(rig).press(5, 0.1).edges(tracker);
        tracker.end();

        assertThat(played.gestures).containsExactly(new Played.Pressed(Gesture.MISSED_UNSEEN, 5.0));
    }

    @Test
    void theFirstPlaceWhereABallWouldBeSeenIsThatOfAPairThatSees() {
        Tracker tracker = new Tracker(STANDARD, new Played());
        assertThat(tracker.unseenMm()).isBetween(-322.0, -300.0);
        tracker.setUsable(STANDARD.beams().get(0).channel(), false);
        assertThat(tracker.unseenMm()).isBetween(893.0, 914.4);
    }

    /** Their light is on, whatever comes. */
    private static Script deaf(String... names) {
        Script script = new Script(STANDARD);
        for (String name : names) {
            script.faulty(name);
        }
        return script;
    }
}

package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;

import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.rig.Rig;
import org.cupbeam.track.Played.Pressed;
import org.cupbeam.track.TrackSink.Gesture;
import org.junit.jupiter.api.Test;

class PedalInPlayTest {
    private static final Rig RIG = PracticeRigs.withPedal(PracticeRigs.STANDARD.level());

    @Test
    void aShortPressIsABallThatMissedShortUnseen() {
        assertThat(new Script(RIG).press(1, 0.15).press(3, 0.05).played().gestures)
                .containsExactly(new Pressed(Gesture.MISSED_UNSEEN, 1), new Pressed(Gesture.MISSED_UNSEEN, 3));
    }

    @Test
    void twoQuickPressesTakeTheLastAttemptBack() {
        assertThat(new Script(RIG).press(1, 0.1).press(1.3, 0.1).played().gestures)
                .extracting(Pressed::gesture).containsExactly(Gesture.TAKE_BACK);
    }

    @Test
    void theSecondPressNeedOnlyBeginInTime() {
        assertThat(new Script(RIG).press(1, 0.1).press(1.5, 0.4).played().gestures)
                .extracting(Pressed::gesture).containsExactly(Gesture.TAKE_BACK);
    }

    @Test
    void aSecondPressThatComesLateIsOneByItself() {
        assertThat(new Script(RIG).press(1, 0.1).press(1.6, 0.1).played().gestures)
                .extracting(Pressed::gesture).containsExactly(Gesture.MISSED_UNSEEN, Gesture.MISSED_UNSEEN);
    }

    @Test
    void aLongPressIsForTheNextPlayer() {
        assertThat(new Script(RIG).press(1, 1.2).played().gestures).containsExactly(new Pressed(Gesture.NEXT, 1));
    }

    @Test
    void aMissEnteredJustBeforeThePlayerChangesIsNotLost() {
        assertThat(new Script(RIG).press(1, 0.1).press(1.4, 1).played().gestures)
                .containsExactly(new Pressed(Gesture.MISSED_UNSEEN, 1), new Pressed(Gesture.NEXT, 1.4));
    }

    @Test
    void aPedalThatBouncesIsPressedOnce() {
        Script script = new Script(RIG).blocks("pedal", 1, 1.0004).blocks("pedal", 1.0008, 1.12)
                .blocks("pedal", 1.1205, 1.1207);

        assertThat(script.played().gestures).containsExactly(new Pressed(Gesture.MISSED_UNSEEN, 1));
    }

    @Test
    void aSpikeIsNoPress() {
        assertThat(new Script(RIG).press(1, 0.001).press(2, 0.02).played().gestures).isEmpty();
    }

    @Test
    void thePedalMakesNoAttemptByItself() {
        Played played = new Script(RIG).press(1, 0.1).rolls(FakeBall.holedFor(RIG, 2, -3000, 400)).played();

        assertThat(played.only().holed()).isTrue();
        assertThat(played.gestures).hasSize(1);
    }
}

package org.cupbeam.studio.insight.make;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.cupbeam.studio.insight.shot.Break;
import org.cupbeam.studio.insight.shot.Golfer;
import org.cupbeam.studio.insight.shot.Lie;
import org.cupbeam.studio.insight.shot.Sessions;
import org.cupbeam.studio.insight.shot.Shot;
import org.junit.jupiter.api.Test;

class TalliesTest {
    @Test
    void puttsAreCountedByPlaceAndKind() {
        Shot here = Shot.of(1, 0, 914.4, true).tagged(Break.STRAIGHT, Lie.UPHILL);
        Tallies tallies = Tallies.of(Sessions.of(List.of(here, here, Shot.of(1, 0, 915.9, false),
                Shot.of(1, 0, 1828.8, false).tagged(Break.STRAIGHT, Lie.UPHILL))));
        assertThat(tallies.byPlace()).containsExactly(new Tries(914.9, 3, 2), new Tries(1828.8, 1, 0));
        assertThat(tallies.byKind()).containsExactly(
                new Tallies.Kind(new Tries(914.9, 2, 2), Break.STRAIGHT, Lie.UPHILL),
                new Tallies.Kind(new Tries(914.9, 1, 0), Break.UNKNOWN, Lie.UNKNOWN),
                new Tallies.Kind(new Tries(1828.8, 1, 0), Break.STRAIGHT, Lie.UPHILL));
    }

    @Test
    void decelerationComesFromWhatRolled() {
        List<Shot> shots = Fitting.ladder(Golfer.club(), new Random(1), 2000);
        assertThat(Tallies.of(Sessions.of(shots)).decelerationMmPerS2()).isCloseTo(Golfer.DECELERATION, within(6.0));
        List<Shot> unmeasured = List.of(Shot.of(1, 0, 2000, true).onGreen(12, 0.2));
        assertThat(Tallies.of(Sessions.of(unmeasured)).decelerationMmPerS2()).isCloseTo(457.2, within(1e-9));
    }

    /** A rig that sees the pace of what runs past alone teaches nothing of pace: it would be thought far too hard. */
    @Test
    void paceIsLearntOnlyWhereHoledPuttsHaveOne() {
        List<Shot> shots = Fitting.ladder(Golfer.club(), new Random(2), 3000);
        List<Shot> gate = shots.stream().map(shot -> shot.holed() || !(shot.paceMm() > 900)
                ? Shot.of(shot.session(), shot.atMs(), shot.distanceMm(), shot.holed()) : shot).toList();
        Sessions sessions = Sessions.of(gate);
        assertThat(sessions.measuredPutts()).isZero();
        assertThat(Tallies.of(sessions).stroke().pace().putts()).isZero();
        assertThat(Sessions.of(shots).measuredPutts()).isEqualTo(3000);
    }

    /** Makes of a player who errs by an angle alone: the one angle is found, and the second model needs no error of length. */
    @Test
    void thePlayersOwnPuttsAreFittedByEitherModel() {
        Random random = new Random(8);
        OneAngle truth = new OneAngle(Math.toRadians(1.6));
        Sessions sessions = Sessions.of(IntStream.range(0, 6000).mapToObj(i -> {
            double distanceMm = 914.4 * (1 + i % 8);
            return Shot.of(i / 60, i, distanceMm, random.nextDouble() < truth.at(distanceMm));
        }).toList());
        Tallies tallies = Tallies.of(sessions);
        assertThat(Math.toDegrees(tallies.oneAngle().parameter(0).value())).isCloseTo(1.6, within(0.05));
        assertThat(tallies.oneAngle().parameter(0).holds(Math.toRadians(1.6))).isTrue();
        assertThat(tallies.makesAlone().curve().at(2743.2)).isCloseTo(truth.at(2743.2), within(0.03));
    }

    @Test
    void aBreakBeginsASession() {
        assertThat(Sessions.numbers(new long[] {0, 1000, 5000, 5500, 20_000}, 3999)).containsExactly(0, 0, 1, 1, 2);
        assertThat(Sessions.numbers(new long[0], 1)).isEmpty();
    }

    @Test
    void sessionsFollowOneAnother() {
        Sessions sessions = Sessions.of(IntStream.range(0, 10)
                .mapToObj(i -> Shot.of(i < 4 ? 7 : 9, 1000L * i, 2000, i % 2 == 0)).toList());
        assertThat(sessions.count()).isEqualTo(2);
        assertThat(sessions.putts(1)).isEqualTo(6);
        assertThat(sessions.atMs(1)).isEqualTo(4000);
        assertThat(Sessions.of(List.of()).count()).isZero();
    }
}

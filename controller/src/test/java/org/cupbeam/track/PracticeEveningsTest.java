package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.edge.practice.Evening;
import org.cupbeam.edge.practice.PracticeLane;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.edge.practice.Room;
import org.cupbeam.edge.practice.Surface;
import org.cupbeam.edge.practice.Truth;
import org.cupbeam.rig.Channel.Kind;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Grades the tracker on 20,000 putts of 160 simulated lanes: level and sloped greens, slow and fast, each lane with its own
 * errors in the green's speed and in where its beams stand, in a busy room. The simulation shares constants with the
 * tracker, no formula.
 */
class PracticeEveningsTest {
    private static final long SEED = Long.getLong("cupbeam.seed", 2_718_281);
    private static final int LANES = 40;
    private static final int PUTTS = 125;
    private static final double[][] GREENS = {{10, 0}, {11, 2}, {9, -1.5}, {12, 0}, {8, 1}};
    /** How much putts on one green differ: unknown of a real one, so lanes vary in it. */
    private static final double[] SPREADS = {0.004, 0.0075, 0.010};

    @Test
    void everyPuttOfManyLanesIsReportedAsItWas() {
        Grade all = new Grade(PracticeRigs.STANDARD.level().limitMm(), false);
        for (PracticeRigs rigs : PracticeRigs.values()) {
            boolean strikes = rigs.level().channelOf(Kind.STRIKE) >= 0;
            Grade grade = new Grade(rigs.level().limitMm(), strikes);
            for (int lane = 0; lane < LANES; lane++) {
                PracticeLane busy = PracticeLane.busy(rig(rigs, lane));
                // Which of two balls under way was struck first is another matter: see below.
                play(strikes ? busy.with(oneAtATime(Room.busy())) : busy, lane, grade);
            }
            report(rigs + ", busy", grade);
            grade.assertNothingWrong();
            if (rigs == PracticeRigs.STANDARD || rigs == PracticeRigs.FULL) {
                assertThat(grade.errorMm(0.5)).as("median finish error").isLessThanOrEqualTo(4.5);
                assertThat(grade.errorMm(0.9)).as("90th percentile of finish errors").isLessThanOrEqualTo(21);
            }
            all.pool(grade);
        }
        assertThat(all.coverage()).as("95 %% intervals that hold, of %s", all).isBetween(0.92, 0.98);
    }

    @ParameterizedTest
    @EnumSource(value = PracticeRigs.class, names = {"GATE", "STANDARD"})
    void aBallStruckBeforeTheLastLiesStillIsToldFromIt(PracticeRigs rigs) {
        Grade grade = new Grade(rigs.level().limitMm(), false);
        for (int lane = 0; lane < LANES / 2; lane++) {
            play(PracticeLane.brisk(rig(rigs, lane)), lane, grade);
        }

        report(rigs + ", brisk", grade);
        grade.assertNothingWrong();
    }

    /**
     * With a strike sensor, two strikes that wait and one ball that comes can be paired in two ways; without beams before the
     * hole nothing but the time since each can tell. So a few pairs get each other's outcome. This holds how few.
     */
    @Test
    void twoBallsUnderWayGetEachOthersOutcomeRarely() {
        assertThat(mixedUp(PracticeRigs.FULL)).as("with beams before the hole").isLessThan(0.02);
        assertThat(mixedUp(PracticeRigs.STRUCK)).as("with a strike sensor and a gate").isLessThan(0.08);
    }

    /** The share of early second balls whose pair was mixed up. */
    private static double mixedUp(PracticeRigs rigs) {
        Grade grade = new Grade(rigs.level().limitMm(), true);
        long early = 0;
        for (int lane = 0; lane < LANES / 2; lane++) {
            Evening evening = play(PracticeLane.brisk(rig(rigs, lane)), lane, grade);
            early += evening.truths().stream().filter(t -> t.traits().contains(Truth.Trait.EARLY)).count();
        }
        report(rigs + ", brisk, " + early + " struck early", grade);
        return grade.wrongOutcomes / 2.0 / early;
    }

    private static Rig rig(PracticeRigs rigs, int lane) {
        double[] green = GREENS[lane % GREENS.length];
        return rigs.on(green[0], green[1], 0);
    }

    private static Evening play(PracticeLane practice, int lane, Grade grade) {
        Surface usual = Surface.usual();
        Surface surface = new Surface(usual.laneSpeedSd(), SPREADS[lane % SPREADS.length], usual.driftSdPerHour(),
                usual.slidingFriction(), usual.rebound());
        Evening evening = Evening.simulate(SEED + lane, practice.with(surface), PUTTS);
        List<Attempt> attempts = new ArrayList<>();
        Tracker tracker = new Tracker(evening.rig(), attempts::add);
        evening.play(tracker);
        tracker.end();
        grade.add(PracticeTruth.of(evening), attempts);
        return evening;
    }

    private static Room oneAtATime(Room room) {
        return new Room(room.walk(), room.passBy(), room.hand(), room.reach(), room.rollBack(), room.forward(),
                room.wave(), room.stand(), 0, room.bump());
    }

    private static void report(String what, Grade grade) {
        System.out.println("seed " + SEED + ", " + what + ": " + grade);
        grade.faults.stream().filter(fault -> !fault.startsWith("finish")).limit(12)
                .forEach(fault -> System.out.println("  " + fault));
    }
}

package org.cupbeam.edge.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.cupbeam.edge.practice.Truth.Trait;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class EveningTest {
    private static final int PUTTS = 300;

    private record Edge(int channel, boolean active, long timeNs) {
    }

    @Test
    void theSameSeedGivesTheSameEvening() {
        Evening one = rough(7, PracticeRigs.FULL);
        Evening other = rough(7, PracticeRigs.FULL);

        assertThat(edges(one)).isEqualTo(edges(other));
        assertThat(one.truths()).isEqualTo(other.truths());
        assertThat(edges(one)).isNotEqualTo(edges(rough(8, PracticeRigs.FULL)));
    }

    @ParameterizedTest
    @EnumSource(PracticeRigs.class)
    void edgesComeInOrderOfTimeEachChannelAlternatesAndAllEndClear(PracticeRigs rig) {
        Evening evening = rough(3, rig);

        assertThat(edges(evening)).extracting(Edge::timeNs).isSorted();
        assertThat(Pulses.of(evening).allOver()).isTrue();
    }

    @Test
    void aPuttIsVisibleWhereASensorSawIt() {
        for (Truth truth : clean(5, PracticeRigs.GATE).truths()) {
            boolean crossed = truth.finishMm() > 914.4 - 21.335 && !truth.traits().contains(Trait.FLEW_OVER);
            assertThat(truth.visible()).as("%s", truth).isEqualTo(truth.holed() || crossed);
        }
        assertThat(clean(5, PracticeRigs.FULL).truths()).allMatch(Truth::visible);
    }

    @Test
    void somePuttsDropSomeStopShortAndSomeRunPast() {
        List<Truth> truths = clean(11, PracticeRigs.STANDARD).truths();

        assertThat(truths).filteredOn(Truth::holed).hasSizeBetween(75, 165);
        assertThat(truths).filteredOn(t -> t.finishMm() < 0).hasSizeBetween(15, 100);
        assertThat(truths).filteredOn(Truth::overshoot).hasSizeBetween(8, 90);
        assertThat(truths).filteredOn(Truth::rim).hasSizeBetween(8, 60);
    }

    @Test
    void overManyPuttsAllHappensThatCanHappenToABall() {
        Set<Trait> seen = EnumSet.noneOf(Trait.class);
        for (long seed = 0; seed < 10; seed++) {
            rough(seed, PracticeRigs.FULL).truths().forEach(truth -> seen.addAll(truth.traits()));
        }
        assertThat(seen).containsExactlyInAnyOrder(Trait.values());
    }

    @Test
    void aMissThatTouchedNoRimStopsWhereItWouldHaveWithoutAHole() {
        assertThat(clean(12, PracticeRigs.STANDARD).truths()).filteredOn(t -> !t.holed() && !t.rim())
                .isNotEmpty().allSatisfy(t -> assertThat(t.finishMm()).isCloseTo(t.paceMm(), within(0.01)));
    }

    @Test
    void onACleanEveningTheSensorsSayOnlyWhatBallsDo() {
        Evening evening = clean(13, PracticeRigs.STANDARD);

        assertThat(Pulses.of(evening).on("before-1"))
                .hasSize((int) evening.truths().stream().filter(t -> t.paceMm() > -321.33).count());
        assertThat(Pulses.of(evening).on("cup").stream().filter(p -> evening.truths().stream()
                .noneMatch(t -> t.holed() && t.struckNs() < p.fromNs() && p.toNs() <= t.endedNs()))).isEmpty();
    }

    @Test
    void aBallStruckEarlyFollowsTheOneBeforeIt() {
        List<Truth> truths = Evening.simulate(21, PracticeLane.brisk(PracticeRigs.FULL.level()), PUTTS).truths();

        for (int i = 1; i < truths.size(); i++) {
            boolean early = truths.get(i).struckNs() < truths.get(i - 1).endedNs();
            assertThat(truths.get(i).traits().contains(Trait.EARLY)).isEqualTo(early);
        }
        assertThat(truths).filteredOn(t -> t.traits().contains(Trait.EARLY)).hasSizeBetween(25, 90);
    }

    @Test
    void lanesDifferFromWhatTheirRigFileSaysByAsMuchAsTheyAreToldTo() {
        double sum = 0;
        double squares = 0;
        int lanes = 400;
        Rig rig = PracticeRigs.GATE.level();
        for (int seed = 0; seed < lanes; seed++) {
            double share = Evening.simulate(seed, PracticeLane.busy(rig), 1).truths().get(0).decelMmPerS2() / 548.64;
            sum += share - 1;
            squares += (share - 1) * (share - 1);
        }

        assertThat(sum / lanes).isCloseTo(0, within(0.003));
        assertThat(Math.sqrt(squares / lanes)).isCloseTo(Math.hypot(0.015, 0.004), within(0.002));
    }

    @Test
    void aPuttThatOnlyABrokenSensorCouldHaveSeenIsNotVisible() {
        PracticeLane lane = PracticeLane.clean(PracticeRigs.GATE.level())
                .with(new Fault("cup", Fault.Kind.SILENT, 0, 1e6));
        Evening evening = Evening.simulate(5, lane, PUTTS);

        assertThat(evening.truths()).filteredOn(Truth::holed).isNotEmpty().noneMatch(Truth::visible);
        assertThat(Pulses.of(evening).on("cup")).isEmpty();
    }

    @Test
    void whereThereIsAPedalItIsPressedOnceForEachBallThatWasNotSeen() {
        Rig rig = PracticeRigs.withPedal(PracticeRigs.STANDARD.level());
        PracticeLane lane = PracticeLane.brisk(rig).with(Sensing.ideal());
        Evening evening = Evening.simulate(5, lane, PUTTS);

        List<Pulses.Pulse> presses = Pulses.of(evening).on("pedal");
        assertThat(presses).hasSize((int) evening.truths().stream().filter(t -> !t.visible()).count());
        for (int i = 1; i < presses.size(); i++) {
            assertThat(presses.get(i).fromNs() - presses.get(i - 1).toNs()).isGreaterThan(1_000_000_000L);
        }
    }

    @Test
    void brokenSensorsSayWhatBrokenSensorsSay() {
        PracticeLane lane = PracticeLane.clean(PracticeRigs.GATE.level()).with(
                new Fault("past-1", Fault.Kind.STUCK, 10, 50), new Fault("past-2", Fault.Kind.CHATTERING, 20, 30));
        Pulses pulses = Pulses.of(Evening.simulate(5, lane, 20));

        assertThat(pulses.on("past-1")).anyMatch(p -> p.fromNs() == 10_000_000_000L && p.toNs() == 50_000_000_000L);
        assertThat(pulses.on("past-2").stream().filter(p -> p.lengthMs() < 1).count()).isGreaterThan(500);
    }

    @Test
    void aFaultOfASensorThatIsNotFittedIsRefused() {
        PracticeLane lane = PracticeLane.clean(PracticeRigs.GATE.level())
                .with(new Fault("before-1", Fault.Kind.STUCK, 0, 1));

        assertThatIllegalArgumentException().isThrownBy(() -> Evening.simulate(1, lane, 1))
                .withMessageContaining("before-1");
    }

    private static Evening clean(long seed, PracticeRigs rig) {
        return Evening.simulate(seed, PracticeLane.clean(rig.level()), PUTTS);
    }

    private static Evening rough(long seed, PracticeRigs rig) {
        return Evening.simulate(seed, PracticeLane.rough(rig.level()), PUTTS);
    }

    private static List<Edge> edges(Evening evening) {
        List<Edge> edges = new ArrayList<>();
        evening.play((channel, active, timeNs) -> edges.add(new Edge(channel, active, timeNs)));
        return edges;
    }
}

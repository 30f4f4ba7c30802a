package org.cupbeam.lane;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.event.Command;
import org.cupbeam.event.Rolls;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A test of the green at a gate: the cup is channel 0, the pair past the hole channels 1 and 2, the pedal 3. */
class RollTrialTest {
    private static final Command.Ask BEGIN = new Command.TestRolls(true);
    private static final Command.Ask END = new Command.TestRolls(false);

    @TempDir
    Path folder;
    private SteppedLane lane;

    @BeforeEach
    void open() {
        lane = new SteppedLane(folder.resolve("lane.db"));
        lane.fitted = PracticeRigs.withPedal(PracticeRigs.GATE.level());
        lane.open();
    }

    @AfterEach
    void close() {
        lane.close();
    }

    /** Through the pair at 1.42 m/s, some way or other. */
    private void roll(int first, int second) {
        lane.edge(first, true);
        lane.passWithoutDisk(30);
        lane.edge(first, false);
        lane.passWithoutDisk(10);
        lane.edge(second, true);
        lane.passWithoutDisk(30);
        lane.edge(second, false);
        lane.pass(4_000);
    }

    @Test
    void ballsThatAreRolledAreToldInHealthAsTheBeamsSawThemAndAreNoPutts() {
        lane.ask(BEGIN).sync();
        assertThat(lane.outlet.answer().accepted()).isTrue();
        roll(1, 2);
        roll(2, 1);

        Rolls rolls = lane.outlet.health().rolls();
        assertThat(rolls.beams()).extracting(Rolls.Beam::name).containsExactly("past-1", "past-2");
        assertThat(rolls.rolls()).extracting(Rolls.Roll::way).containsExactly(Rolls.Way.TOWARD, Rolls.Way.BACK);
        assertThat(rolls.rolls().get(0).crossings()).containsExactly(new Rolls.Crossing(0, 0, 30_000_000),
                new Rolls.Crossing(1, 40_000_000, 70_000_000));
        assertThat(rolls.rolls().get(1).number()).isEqualTo(2);
        assertThat(rolls.endsInS()).isBetween(590.0, 600.0);
        lane.hole().miss().pressLong().pass(20_000);
        assertThat(lane.events()).isEmpty();
    }

    @Test
    void afterwardsPuttsCountAgainButNoBallThatRolledBefore() {
        lane.ask(BEGIN).sync();
        lane.edge(1, true);
        lane.passWithoutDisk(30);
        lane.edge(1, false);
        lane.passWithoutDisk(10);
        lane.edge(2, true);
        lane.passWithoutDisk(30);
        lane.edge(2, false);
        lane.passWithoutDisk(50);
        lane.ask(END).pass(20_000);
        assertThat(lane.events()).as("the ball still rolled when the test ended").isEmpty();
        assertThat(lane.outlet.health().rolls()).isNull();

        lane.hole().sync();
        assertThat(lane.events()).hasSize(1);
        lane.ask(BEGIN).hole().ask(END).ask(BEGIN).hole().sync();
        assertThat(lane.events()).hasSize(1);
    }

    @Test
    void aPuttThatWasUnderWayWhenATestBeganIsCounted() {
        lane.edge(1, true);
        lane.passWithoutDisk(30);
        lane.edge(1, false);
        lane.passWithoutDisk(10);
        lane.edge(2, true);
        lane.passWithoutDisk(30);
        lane.edge(2, false);
        lane.passWithoutDisk(50);
        lane.ask(BEGIN).pass(20_000);
        assertThat(lane.events()).hasSize(1);
        assertThat(lane.outlet.health().rolls().rolls()).isEmpty();
    }

    @Test
    void noneBeginsWhileARunGoesOnAndAStartEndsIt() {
        lane.start(SteppedLane.ladder(3, 3), "Ana").ask(BEGIN).sync();
        assertThat(lane.outlet.answer().accepted()).as("nobody has putted yet").isTrue();
        lane.start(SteppedLane.ladder(3, 3), "Ana").pass(300);
        assertThat(lane.outlet.health().rolls()).isNull();
        lane.hole().sync();
        int before = lane.events().size();
        assertThat(before).isGreaterThan(1);

        lane.ask(BEGIN).sync();
        assertThat(lane.outlet.answer().reason()).startsWith("a run goes on");
        lane.ask(new Command.End()).ask(BEGIN).sync();
        assertThat(lane.outlet.answer().accepted()).isTrue();
    }

    @Test
    void itEndsByItselfAndWithThePower() {
        lane.ask(BEGIN).pass(595_000);
        assertThat(lane.outlet.health().rolls()).isNotNull();
        lane.pass(6_000);
        assertThat(lane.outlet.health().rolls()).isNull();

        lane.ask(BEGIN).sync();
        lane.crash().hole().pass(300);
        assertThat(lane.outlet.health().rolls()).isNull();
        assertThat(lane.events()).hasSize(1);
    }

    @Test
    void aSecondBeginningIsAfresh() {
        lane.ask(BEGIN).sync();
        roll(1, 2);
        lane.ask(BEGIN).sync();
        lane.pass(300);
        assertThat(lane.outlet.health().rolls().rolls()).isEmpty();
        roll(2, 1);
        assertThat(lane.outlet.health().rolls().rolls().get(0).number()).isEqualTo(1);
    }

    @Test
    void aRigWithOneBeamCannotMeasureARoll() {
        lane.close();
        lane.fitted = SteppedLane.rig();
        lane.open().ask(BEGIN).sync();
        assertThat(lane.outlet.answer().reason()).startsWith("a roll is measured between two beams");
    }
}

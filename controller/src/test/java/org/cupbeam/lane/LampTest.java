package org.cupbeam.lane;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.cupbeam.event.Command;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LampTest {
    @TempDir
    Path folder;
    private SteppedLane lane;

    @BeforeEach
    void open() {
        lane = new SteppedLane(folder.resolve("lane.db")).open();
    }

    @AfterEach
    void close() {
        lane.close();
    }

    @Test
    void aHoledPuttIsShownForAWhile() {
        lane.hole().passWithoutDisk(3_000);
        assertThat(lane.lamp).containsExactly(Lamp.State.READY, Lamp.State.HOLED, Lamp.State.READY);
    }

    @Test
    void aBallIsShownWhileABeamSeesIt() {
        lane.passWithoutDisk(20).pulse(SteppedLane.BEAM, 40).passWithoutDisk(100);
        assertThat(lane.lamp).containsExactly(Lamp.State.READY, Lamp.State.BALL_SEEN, Lamp.State.READY);
    }

    @Test
    void aMissInsideTheLimitShowsNothing() {
        lane.miss().passWithoutDisk(1_000);
        assertThat(lane.lamp).containsExactly(Lamp.State.READY);
    }

    @Test
    void whatIsEnteredOnAPageIsNotShownBesideTheHole() {
        lane.ask(new Command.Miss(2_000)).passWithoutDisk(1_000);
        assertThat(lane.lamp).containsExactly(Lamp.State.READY);
    }
}

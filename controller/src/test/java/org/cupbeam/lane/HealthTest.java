package org.cupbeam.lane;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.cupbeam.edge.ChannelHealth;
import org.cupbeam.event.Data;
import org.cupbeam.event.Event;
import org.cupbeam.event.Health.Sensor.Condition;
import org.cupbeam.event.Stamp;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HealthTest {
    @TempDir
    Path folder;
    private SteppedLane lane;

    @BeforeEach
    void open() {
        lane = new SteppedLane(folder.resolve("lane.db"));
    }

    @AfterEach
    void close() {
        lane.close();
    }

    private Condition condition(int channel) {
        return lane.outlet.health().sensors().get(channel).state();
    }

    /** Turns on and off so many times a second. */
    private void chatter(int channel, int perSecond, int seconds) {
        for (int i = 0; i < perSecond * seconds; i++) {
            lane.edge(channel, true);
            lane.passWithoutDisk(500 / perSecond);
            lane.edge(channel, false);
            lane.pass(500 / perSecond);
        }
    }

    @Test
    void aLaneSaysHowItIsFromTheStartAndEveryFiveSeconds() {
        lane.open();
        assertThat(lane.outlet.healths).hasSize(1);
        assertThat(condition(SteppedLane.CUP)).isEqualTo(Condition.UNSEEN);
        assertThat(lane.outlet.health().faults()).isEmpty();

        lane.pass(30_000);
        assertThat(lane.outlet.healths).hasSizeBetween(6, 7);
    }

    @Test
    void aSensorThatTurnsIsToldOfWithinASecondAndNoOftenerThanThatHoweverMuchItTurns() {
        lane.open().pass(2_000);
        lane.edge(SteppedLane.BEAM, true);
        lane.pass(500);
        assertThat(condition(SteppedLane.BEAM)).isEqualTo(Condition.BLOCKED);
        lane.edge(SteppedLane.BEAM, false);
        lane.pass(1_250);
        assertThat(condition(SteppedLane.BEAM)).isEqualTo(Condition.CLEAR);

        int before = lane.outlet.healths.size();
        chatter(SteppedLane.PEDAL, 5, 10);
        assertThat(lane.outlet.healths).hasSizeBetween(before + 8, before + 11);
    }

    @Test
    void edgesAreCountedByTheMinuteAndTheLastIsTimed() {
        lane.open().hole().hole().pass(10_000);

        assertThat(lane.outlet.health().sensors().get(0).edgesPerMinute()).isEqualTo(4);
        assertThat(lane.outlet.health().sensors().get(0).lastEdgeAgoS()).isBetween(5.0, 11.0);
        assertThat(condition(SteppedLane.CUP)).isEqualTo(Condition.CLEAR);
        lane.pass(60_000);
        assertThat(lane.outlet.health().sensors().get(0).edgesPerMinute()).isZero();
        assertThat(lane.outlet.health().outbox()).isEqualTo(2);
    }

    @Test
    void aSensorThatIsStuckIsReportedWithinTenSecondsInWordsAndOnTheLamp() {
        lane.open().pass(1_000);
        lane.edge(SteppedLane.BEAM, true);
        lane.pass(10_000);

        assertThat(condition(SteppedLane.BEAM)).isEqualTo(Condition.STUCK);
        assertThat(lane.outlet.health().faults()).singleElement().asString()
                .startsWith("beam past is blocked all the time");
        assertThat(lane.lamp).endsWith(Lamp.State.FAULT);
        assertThat(lane.outlet.health().unknown()).singleElement().asString().startsWith("where a ball stops");

        lane.edge(SteppedLane.BEAM, false);
        lane.pass(2_000);
        assertThat(condition(SteppedLane.BEAM)).isEqualTo(Condition.CLEAR);
        assertThat(lane.outlet.health().faults()).isEmpty();
        assertThat(lane.outlet.health().unknown()).isEmpty();
        assertThat(lane.lamp).endsWith(Lamp.State.READY);
    }

    @Test
    void aCupThatChattersIsReportedAndMakesNoAttemptsUntilItIsQuiet() {
        lane.open();
        chatter(SteppedLane.CUP, 25, 4);
        assertThat(condition(SteppedLane.CUP)).isEqualTo(Condition.CHATTERING);
        assertThat(lane.outlet.health().faults()).singleElement().asString().contains("faster than anything in play");
        long before = lane.journal.last();
        chatter(SteppedLane.CUP, 25, 2);
        lane.hole().pass(3000);
        assertThat(lane.journal.last()).isEqualTo(before);

        lane.pass(10_000).hole().pass(1000);
        assertThat(lane.outlet.health().faults()).isEmpty();
        assertThat(lane.journal.last()).isEqualTo(before + 1);
    }

    @Test
    void aCupThatIsTheWrongWayRoundIsToldFromOneThatIsBlocked() {
        lane.open();
        lane.edge(SteppedLane.CUP, true);
        lane.pass(20_000);
        assertThat(lane.outlet.health().faults()).singleElement().asString().startsWith("the cup's sensor is blocked");
        for (int i = 0; i < 2; i++) {
            lane.edge(SteppedLane.CUP, false);
            lane.pass(30);
            lane.edge(SteppedLane.CUP, true);
            lane.pass(10_000);
        }

        assertThat(lane.outlet.health().faults()).singleElement().asString().contains("set active = \"low\"");
        assertThat(lane.outlet.health().unknown()).singleElement().asString().startsWith("which balls dropped");
        assertThat(lane.lamp).endsWith(Lamp.State.FAULT);
        assertThat(lane.journal.last()).isZero();
    }

    @Test
    void aPedalThatIsStoodOnEndsNoRun() {
        lane.open().start(SteppedLane.ladder(3, 3), "Ana").hole();
        lane.edge(SteppedLane.PEDAL, true);
        lane.pass(20_000);
        assertThat(condition(SteppedLane.PEDAL)).isEqualTo(Condition.STUCK);
        lane.edge(SteppedLane.PEDAL, false);
        lane.pass(3_000);

        assertThat(lane.events()).hasSize(2);
        lane.pressLong().sync();
        assertThat(lane.events()).hasSize(3);
    }

    @Test
    void aWireThatCannotBeReadIsAFault() {
        lane.wires = List.of(new ChannelHealth("cup", 0, 0, 3, 0, 0, 0, true, 0, "the line is taken by another program"));
        lane.open();

        assertThat(lane.outlet.health().faults())
                .containsExactly("cup cannot be read: the line is taken by another program");
        assertThat(lane.outlet.health().edgesDropped()).isEqualTo(3);
    }

    @Test
    void edgesThatFindNoRoomAreCounted() {
        lane.open();
        for (int i = 0; i < LaneAgent.EDGES + 7; i++) {
            lane.edge(SteppedLane.BEAM, i % 2 == 0);
        }
        lane.pass(1000);

        assertThat(lane.outlet.health().edgesDropped()).isEqualTo(7);
        assertThat(lane.outlet.health().faults()).anyMatch(fault -> fault.startsWith("edges came faster"));
    }

    @Test
    void aJournalThatWasDamagedAndMovedAsideIsReported() throws Exception {
        Files.writeString(folder.resolve("lane.db"), "this is no journal, and was never one".repeat(1000));
        lane.open();

        assertThat(lane.outlet.health().faults()).singleElement().asString()
                .startsWith("the journal was damaged, and a new one begun; the old one is " + folder);
    }

    @Test
    void onceTheClockIsSetTheHostIsToldHowToSetEarlierTimesRight() {
        lane.synchronised = false;
        lane.open().hole().sync();
        assertThat(lane.outlet.health().clock()).isEqualTo(Stamp.Clock.UNSYNCHRONISED);

        lane.wall = lane.wall.plus(Duration.ofDays(400));
        lane.synchronised = true;
        lane.crash().pass(1000);

        assertThat(lane.events()).hasSize(2);
        Event event = lane.events().get(1);
        Data.Clock clock = (Data.Clock) event.data();
        assertThat(clock.wall()).isEqualTo(lane.wall);
        assertThat(clock.stamp().clock()).isEqualTo(Stamp.Clock.SYNCHRONISED);
        assertThat(lane.events().get(0).data().stamp().clock()).isEqualTo(Stamp.Clock.UNSYNCHRONISED);
        assertThat(lane.outlet.health().clock()).isEqualTo(Stamp.Clock.SYNCHRONISED);
        lane.crash().hole().pass(1000);
        assertThat(lane.events()).as("said once").hasSize(3);
    }

    @Test
    void aClockThatWasRightAllAlongNeedsNoWord() {
        lane.open().hole().pass(1000);
        assertThat(lane.events()).hasSize(1);
    }

    @Test
    void anEarlierBootsTimesAreNotSetRightByThisBootsClock() {
        lane.synchronised = false;
        lane.open().hole().sync();
        lane.boot = "boot-2";
        lane.synchronised = true;
        lane.crash().pass(1000);

        assertThat(lane.events()).hasSize(1);
    }

    @Test
    void aWallClockThatJumpsChangesNoScoreOrderOrInterval() {
        lane.open().start(SteppedLane.ladder(5, 2), "Ana").hole();
        lane.wall = lane.wall.minus(Duration.ofDays(20_000));
        lane.miss();
        lane.wall = lane.wall.plus(Duration.ofDays(30_000));
        lane.hole().pass(1000);

        assertThat(lane.events()).extracting(Event::sequence).containsExactly(1L, 2L, 3L, 4L);
        assertThat(lane.events()).extracting(event -> event.data().stamp().monotonicNs()).isSorted();
        assertThat(lane.outlet.score().players().get(0).station()).isEqualTo(3);
        assertThat(lane.outlet.health().faults()).isEmpty();
    }
}

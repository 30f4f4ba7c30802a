package org.cupbeam.studio.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import org.cupbeam.event.Event;
import org.cupbeam.studio.ScriptedLane;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Whatever a log says is its own trouble is waited out; an event is set aside only for what is its own. */
@Timeout(20)
class KeepingTest {
    private static final Instant NOW = Instant.parse("2026-11-25T19:00:00Z");

    /** What the log answers, try by try; beyond these it keeps everything. */
    private final List<RuntimeException> answers = new ArrayList<>();
    private final ScriptedLane lane = new ScriptedLane("one", "j1");
    private final List<Arrival> kept = new ArrayList<>();
    private final List<String> troubles = new ArrayList<>();
    private final Keeping keeping = new Keeping(new CountDownLatch(1), System::nanoTime);

    private final EventLog log = new EventLog() {
        @Override
        public List<Kept> kept() {
            return List.of();
        }

        @Override
        public void commit(Batch batch) {
            troubles.add(keeping.trouble());
            RuntimeException answer = answers.isEmpty() ? null : answers.remove(0);
            if (answer != null) {
                throw answer;
            }
            kept.addAll(batch.arrivals());
        }
    };

    private void keepTwo(RuntimeException... first) throws InterruptedException {
        answers.addAll(Arrays.asList(first));
        keeping.keep(log, new Batch(List.of(arrival(), arrival()), List.of(), List.of()));
        assertThat(kept).extracting(Arrival::sequence).containsExactly(1L, 2L);
    }

    private Arrival arrival() {
        Event event = lane.puttsOutsideAnyRun();
        return new Arrival(event.source(), event.sequence(), event.time(), event, null, ScriptedLane.json(event), NOW);
    }

    private static NotNow full() {
        return new NotNow("store studio.db: its disk is full; make room", null);
    }

    private static IllegalStateException makesNoSense() {
        return new IllegalStateException("that makes no sense");
    }

    @Test
    void aDiskThatIsFullForAWhileIsWaitedOutAndSaidMeanwhile() throws Exception {
        keepTwo(full(), full());

        assertThat(kept).allMatch(each -> each.problem() == null);
        assertThat(troubles).containsExactly(null, "store studio.db: its disk is full; make room", "store studio.db: its disk is full; make room");
        assertThat(keeping.trouble()).isNull();
    }

    @Test
    void roomThatComesBackBetweenTwoTriesMakesNoEventOneThatIsNotUnderstood() throws Exception {
        for (int tries = 1; tries <= 7; tries++) { // the disk fills up at each step of the ways through a batch
            List<RuntimeException> until = new ArrayList<>();
            until.add(makesNoSense()); // so that it goes one by one
            for (int i = 1; i < tries; i++) {
                until.add(null);
            }
            until.add(full());
            answers.clear();
            kept.clear();
            ScriptedLane another = new ScriptedLane("one", "j" + tries);
            List<Arrival> two = new ArrayList<>();
            for (int i = 0; i < 2; i++) {
                Event event = another.puttsOutsideAnyRun();
                two.add(new Arrival(event.source(), event.sequence(), event.time(), event, null, ScriptedLane.json(event), NOW));
            }
            answers.addAll(until);
            keeping.keep(log, new Batch(two, List.of(), List.of()));
            assertThat(kept).as("full at step " + tries).extracting(Arrival::sequence).contains(1L, 2L);
            assertThat(kept).as("full at step " + tries).allMatch(each -> each.problem() == null);
        }
    }

    @Test
    void anEventThatFailsOnceForAReasonThatIsGoneIsKeptWithItsMeaning() throws Exception {
        keepTwo(makesNoSense(), null, null, makesNoSense());
        assertThat(kept).allMatch(each -> each.problem() == null);
    }

    @Test
    void anEventThatFailsTwiceForAReasonOfItsOwnIsSetAsideAndTheOtherIsNot() throws Exception {
        keepTwo(makesNoSense(), null, null, makesNoSense(), makesNoSense());
        assertThat(kept.get(0).problem()).contains("that makes no sense");
        assertThat(kept.get(1).problem()).isNull();
    }

    @Test
    void aDiskThatFillsUpAsAnEventIsAboutToBeSetAsideHasItTriedAnew() throws Exception {
        keepTwo(makesNoSense(), null, null, makesNoSense(), full());
        assertThat(kept).allMatch(each -> each.problem() == null);
    }
}

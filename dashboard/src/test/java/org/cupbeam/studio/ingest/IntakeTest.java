package org.cupbeam.studio.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.Event;
import org.cupbeam.event.Source;
import org.cupbeam.event.Stored;
import org.cupbeam.event.StoredJson;
import org.cupbeam.studio.ScriptedLane;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(20)
class IntakeTest {
    private final ScriptedLane lane = new ScriptedLane("one", "j1");
    private final FakeLog log = new FakeLog();
    private final BlockingQueue<Message> said = new LinkedBlockingQueue<>();
    private final Set<Long> committed = ConcurrentHashMap.newKeySet();
    private volatile EventLog turn = log;
    private Intake intake;

    @AfterEach
    void close() {
        intake.close();
    }

    @Test
    void saysHowFarAJournalIsKept() throws Exception {
        start();
        offer(lane.puttsOutsideAnyRun());
        offer(lane.puttsOutsideAnyRun());

        awaitStored(2);
        assertThat(log.arrivals()).extracting(Arrival::sequence).containsExactly(1L, 2L);
        assertThat(committed).containsExactlyInAnyOrder(1L, 2L);
    }

    @Test
    void saysNothingBeforeItIsCommitted() throws Exception {
        log.failing = batch -> true;
        start();
        offer(lane.puttsOutsideAnyRun());

        assertThat(said.poll(300, TimeUnit.MILLISECONDS)).isNull();
        log.failing = batch -> false;
        awaitStored(1);
    }

    @Test
    void countsNothingBeyondAGap() throws Exception {
        start();
        offer(lane.puttsOutsideAnyRun());
        Event second = lane.puttsOutsideAnyRun();
        offer(lane.puttsOutsideAnyRun());
        awaitStored(1);

        offer(second);
        awaitStored(3);
    }

    @Test
    void tellsALaneAgainThatSendsWhatIsKept() throws Exception {
        start();
        Event first = lane.puttsOutsideAnyRun();
        offer(first);
        awaitStored(1);
        said.clear();
        offer(first);

        awaitStored(1);
        assertThat(log.arrivals()).hasSize(1);
    }

    @Test
    void tellsANewJournalThatNothingOfItIsKept() throws Exception {
        start();
        intake.heardOf(new Source("home", "one", "brand-new"));

        Message message = said.poll(5, TimeUnit.SECONDS);
        assertThat(message.topic()).isEqualTo("cupbeam/home/one/stored");
        assertThat(StoredJson.decode(message.payload())).isEqualTo(new Stored("brand-new", 0));
    }

    @Test
    void saysOfEveryLaneHowFarItIsKeptWhenTheBrokerMayHaveForgotten() throws Exception {
        log.before.add(new EventLog.Kept(new Source("home", "one", "old"), 7));
        log.before.add(new EventLog.Kept(new Source("home", "one", "new"), 9));
        log.before.add(new EventLog.Kept(new Source("home", "two", "x"), 3));
        start();
        intake.sayAllAgain();

        Map<String, String> all = Map.of(text(said.take()), "", text(said.take()), "");
        assertThat(all.keySet()).containsExactlyInAnyOrder(
                "cupbeam/home/one/stored {\"journal\":\"new\",\"sequence\":\"0000000000000009\"}",
                "cupbeam/home/two/stored {\"journal\":\"x\",\"sequence\":\"0000000000000003\"}");
    }

    @Test
    void keepsAnEventThatTheStoreCannotTakeInWithoutItsMeaningAndGoesOn() throws Exception {
        log.failing = batch -> batch.arrivals().stream().anyMatch(a -> a.sequence() == 2 && a.event() != null);
        start();
        offer(lane.puttsOutsideAnyRun());
        offer(lane.puttsOutsideAnyRun());
        offer(lane.puttsOutsideAnyRun());

        awaitStored(3);
        assertThat(log.arrivals()).extracting(Arrival::sequence).contains(1L, 2L, 3L);
        assertThat(log.arrivals()).filteredOn(a -> a.sequence() == 2).singleElement()
                .satisfies(a -> assertThat(a.problem()).contains("cannot keep that"));
    }

    @Test
    void setsAsideRubbishOnceAndGoesOn() throws Exception {
        start();
        intake.offer(Message.of(lane.topic(), "rubbish".getBytes(StandardCharsets.UTF_8)));
        offer(lane.puttsOutsideAnyRun());

        awaitStored(1);
        assertThat(log.deadLetters()).hasSize(1);
    }

    @Test
    void commitsManyTogetherInARush() throws Exception {
        AtomicInteger commits = new AtomicInteger();
        log.failing = batch -> {
            commits.incrementAndGet();
            return false;
        };
        create();
        for (int i = 0; i < 3_000; i++) {
            offer(lane.puttsOutsideAnyRun());
        }
        intake.start();

        awaitStored(3_000);
        assertThat(commits.get()).isLessThan(10);
    }

    @Test
    void keepsWhatIsWaitingBeforeItCloses() {
        create();
        offer(lane.puttsOutsideAnyRun());
        intake.start();
        intake.close();

        assertThat(log.arrivals()).hasSize(1);
    }

    @Test
    void looksOnWhileAnotherHostKeepsEventsAndGoesOnWithWhatThatOneLeft() throws Exception {
        turn = null;
        create();
        for (int i = 0; i < 3; i++) {
            offer(lane.puttsOutsideAnyRun());
        }
        intake.heardOf(new Source("home", "two", "j2"));
        while (intake.step(0)) {
            assertThat(said).isEmpty();
        }
        assertThat(log.arrivals()).isEmpty();
        log.before.add(new EventLog.Kept(lane.source, 1)); // the first was kept, and then that host died
        turn = log;
        intake.start();

        awaitStored(3);
        assertThat(log.arrivals()).extracting(Arrival::sequence).containsExactly(2L, 3L);
        Message next = said.poll(5, TimeUnit.SECONDS);
        while (next != null && !next.topic().equals("cupbeam/home/two/stored")) {
            next = said.poll(5, TimeUnit.SECONDS);
        }
        assertThat(next).as("of every lane").isNotNull();
    }

    @Test
    void keepsNothingThatWasSortedInAnEarlierTurn() throws Exception {
        FakeLog next = new FakeLog();
        next.before.add(new EventLog.Kept(lane.source, 5));
        log.failing = batch -> {
            turn = next;
            throw new NotOurTurn("over");
        };
        start();
        offer(lane.puttsOutsideAnyRun());
        awaitStored(5);

        for (int i = 0; i < 5; i++) {
            offer(lane.puttsOutsideAnyRun()); // 2 to 6
        }
        awaitStored(6);
        assertThat(log.arrivals()).isEmpty();
        assertThat(next.arrivals()).extracting(Arrival::sequence).containsExactly(6L);
    }

    @Test
    void leavesAMessageWithItsBrokerUntilItIsKeptForGood() throws Exception {
        AtomicInteger taken = new AtomicInteger();
        AtomicInteger tries = new AtomicInteger();
        log.failing = batch -> {
            assertThat(taken).as("before it is kept").hasValue(0);
            return tries.incrementAndGet() < 3;
        };
        create();
        Event first = lane.puttsOutsideAnyRun();
        Event second = lane.puttsOutsideAnyRun();
        intake.offer(Message.of(lane.topic(), ScriptedLane.json(first), taken::incrementAndGet));
        intake.step(0);
        assertThat(taken).hasValue(1);
        intake.offer(Message.of(lane.topic(), ScriptedLane.json(lane.puttsOutsideAnyRun()), taken::incrementAndGet));
        intake.step(0);
        assertThat(taken).as("one that waits for what lies before it is only held").hasValue(1);
        log.failing = batch -> false;
        intake.offer(Message.of(lane.topic(), ScriptedLane.json(second), taken::incrementAndGet));
        intake.step(0);
        assertThat(taken).hasValue(3);
        assertThat(log.arrivals()).hasSize(3);
    }

    private void create() {
        intake = new Intake(() -> turn, Patience.WITH_LANES, said::add, arrivals -> arrivals.forEach(a -> committed.add(a.sequence())),
                Clock.systemUTC(), System::nanoTime);
    }

    private void start() {
        create();
        intake.start();
    }

    private void offer(Event event) {
        intake.offer(Message.of(lane.topic(), ScriptedLane.json(event)));
    }

    private void awaitStored(long sequence) throws InterruptedException, BadMessage {
        Stored last = null;
        long untilNs = System.nanoTime() + Duration.ofSeconds(10).toNanos();
        while (System.nanoTime() < untilNs && (last == null || last.sequence() != sequence)) {
            Message message = said.poll(100, TimeUnit.MILLISECONDS);
            last = message == null ? last : StoredJson.decode(message.payload());
        }
        assertThat(last).isEqualTo(new Stored("j1", sequence));
    }

    private static String text(Message message) {
        return message.topic() + " " + new String(message.payload(), StandardCharsets.UTF_8);
    }
}

package org.cupbeam.studio.lease;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.IntStream;
import org.cupbeam.event.Event;
import org.cupbeam.studio.PostgresServer;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.ingest.Batch;
import org.cupbeam.studio.ingest.EventLog;
import org.cupbeam.studio.ingest.NotOurTurn;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Keeper;
import org.cupbeam.studio.store.Store;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Two hosts' stores at one database. */
@Timeout(60)
class TwoHostsOnPostgresIT {
    private final ScriptedLane lane = new ScriptedLane("one", "j1");
    private Database database;
    private Store one;
    private Store other;
    private Succession first;
    private Succession second;

    @BeforeEach
    void open() {
        database = Database.at(PostgresServer.emptyDatabase());
        one = Store.open(database);
        other = Store.open(database);
        first = new Keeper(one).among("main", "first");
        second = new Keeper(other).among("main", "second");
    }

    @AfterEach
    void close() {
        first.close();
        second.close();
        one.close();
        other.close();
    }

    @Test
    void whoHeldTheLeaseWritesNothingOnceAnotherHasIt() {
        first.step();
        second.step();
        assertThat(second.log()).isNull();
        EventLog held = first.log();
        held.commit(batch(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1)));
        expire();
        second.step();

        assertThat(second.log().kept()).containsExactly(new EventLog.Kept(lane.source, 2));
        Event third = lane.holes("r1", null, "Ada", 2);
        assertThatThrownBy(() -> held.commit(batch(third))).isInstanceOf(NotOurTurn.class);
        assertThat(count("event")).isEqualTo(2);
        second.log().commit(batch(third));
        assertThat(count("event")).isEqualTo(3);
        assertThat(first.log()).as("it has learnt").isNull();
    }

    @Test
    void nobodyTakesTheLeaseWhileItsHolderCommits() throws Exception {
        first.step();
        ExecutorService thread = Executors.newSingleThreadExecutor();
        AtomicLong tookToken = new AtomicLong();
        LeaseRow row = new LeaseRow(database::writer, "main", "second");
        try {
            Future<?> taken = one.write(h -> {
                assertThat(h.execute("UPDATE ingest_lease SET until_ms = 0 WHERE token = 1")).isOne(); // as if it ran out now
                Future<?> waits = thread.submit(() -> row.take(Succession.TIME).ifPresent(tookToken::set));
                sleep(500);
                assertThat(waits.isDone()).isFalse();
                return waits;
            });
            taken.get(10, TimeUnit.SECONDS);
            assertThat(tookToken).hasValue(2);
        } finally {
            thread.shutdownNow();
            row.close();
        }
    }

    /** What a host remembers of rows is forgotten when another has written, and one writes at a time. */
    @Test
    void bothWriteAndNoNumberIsGivenTwice() throws Exception {
        new Keeper(one).commit(batch(lane.puttsOutsideAnyRun()));
        ExecutorService threads = Executors.newFixedThreadPool(2);
        List<Future<?>> all = List.of(threads.submit(() -> faults(one, "a")), threads.submit(() -> faults(other, "b")));
        for (Future<?> each : all) {
            each.get(40, TimeUnit.SECONDS);
        }
        threads.shutdown();
        assertThat(count("fault")).isEqualTo(200);
    }

    private void faults(Store store, String name) {
        for (int i = 0; i < 100; i++) {
            int number = i;
            store.writing(h -> {
                h.execute("INSERT INTO fault (id, lane_id, sign, words, began_ms) VALUES (?, 1, ?, ?, 0)",
                        store.next(h, "fault"), name + number, name);
            });
        }
    }

    /** A machine that stands still in the midst of a transaction holds the pen, but not for ever. */
    @Test
    void aHostThatStandsStillWhileItWritesIsCutOff() {
        Assumptions.assumeTrue(Boolean.getBoolean("cupbeam.nightly"), "takes 7 s: in the nightly profile");
        first.step();
        assertThatThrownBy(() -> one.writing(h -> {
            h.execute("UPDATE ingest_lease SET until_ms = 0 WHERE token = 1");
            sleep(7_000);
            h.execute("UPDATE studio SET name = name");
        })).as("the server has ended its connection").isInstanceOf(RuntimeException.class);

        expire();
        second.step();
        second.log().commit(batch(lane.puttsOutsideAnyRun()));
        assertThat(count("event")).isOne();
        one.writing(h -> h.execute("UPDATE studio SET name = name"));
    }

    private void expire() {
        other.writing(h -> h.execute("UPDATE ingest_lease SET until_ms = 0"));
    }

    private int count(String table) {
        return one.read(h -> h.createQuery("SELECT count(*) FROM " + table).mapTo(Integer.class).one());
    }

    private static Batch batch(Event... events) {
        return new Batch(IntStream.range(0, events.length).mapToObj(i -> new Arrival(events[i].source(),
                events[i].sequence(), events[i].time(), events[i], null, ScriptedLane.json(events[i]), Instant.EPOCH)).toList(),
                List.of(), List.of());
    }

    private static void sleep(long ms) {
        try {
            TimeUnit.MILLISECONDS.sleep(ms);
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
    }
}

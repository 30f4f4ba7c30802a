package org.cupbeam.studio.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.cupbeam.event.Event;
import org.cupbeam.studio.PostgresServer;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.ingest.Batch;
import org.cupbeam.studio.ingest.EventLog;
import org.cupbeam.studio.ingest.NotNow;
import org.cupbeam.studio.lease.LeaseRow;
import org.cupbeam.studio.lease.Pen;
import org.cupbeam.studio.lease.Succession;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A host that still runs while one of a newer version brings their store up to date. */
@Timeout(60)
class OutOfDateOnPostgresIT {
    private final ScriptedLane lane = new ScriptedLane("one", "j1");
    private Database database;

    @BeforeEach
    void begin() {
        database = Database.at(PostgresServer.emptyDatabase());
    }

    @Test
    void theOlderOneWritesNothingMoreAndLetsTheNewerKeepWhatLanesSend() throws Exception {
        try (Store store = Store.open(database); Succession older = new Keeper(store).among("main", "older").start()) {
            EventLog log = awaitTurn(older);
            log.commit(batch(lane.starts("r1", null, "Ada", 1)));

            Jdbi.create(database::writer).useTransaction(OutOfDateOnPostgresIT::bringUpToDate);

            Event putt = lane.holes("r1", null, "Ada", 1);
            assertThatThrownBy(() -> log.commit(batch(putt))).as("it may come again").isInstanceOf(NotNow.class)
                    .hasMessageContaining("brought up to date by a newer version of Cupbeam").hasMessageContaining("its schema is 999");
            assertThatThrownBy(() -> store.writing(h -> h.execute("UPDATE studio SET name = 'other'"))).isInstanceOf(StoreTrouble.class);
            assertThat(store.<Integer>read(h -> h.createQuery("SELECT count(*) FROM event").mapTo(Integer.class).one())).isOne();

            LeaseRow newer = new LeaseRow(database::writer, "main", "newer");
            long beganNs = System.nanoTime();
            while (newer.take(Duration.ofSeconds(5)).isEmpty()) {
                assertThat(System.nanoTime() - beganNs).as("ns until the lease is free").isLessThan(4_000_000_000L);
                TimeUnit.MILLISECONDS.sleep(50);
            }
            newer.close();
        }
    }

    @Test
    void tablesAreBroughtUpToDateWhenNobodyWrites() throws Exception {
        int before = Integer.parseInt(Migrations.LATEST) - 1;
        Migrations.run(database, Integer.toString(before));
        Pen older = new Pen();
        try (Handle writing = Jdbi.create(database::writer).open()) {
            writing.begin();
            older.take(writing);
            CompletableFuture<Void> migrating = CompletableFuture.runAsync(() -> Migrations.run(database));
            assertThatThrownBy(() -> migrating.get(1, TimeUnit.SECONDS)).isInstanceOf(TimeoutException.class);
            assertThat(schema(writing)).isEqualTo(before);
            writing.commit();
            migrating.get(20, TimeUnit.SECONDS);
            assertThat(schema(writing)).isEqualTo(before + 1);
            assertThat(writing.inTransaction(older::take)).as("another has written").isTrue();
        }
    }

    /** What a migration of a later version leaves, but for its tables. */
    private static void bringUpToDate(Handle h) {
        h.execute("INSERT INTO flyway_schema_history SELECT installed_rank + 1, '999', 'later', type, 'V999__later.sql', 1, installed_by, "
                + "now(), 1, TRUE FROM flyway_schema_history ORDER BY installed_rank DESC LIMIT 1");
        h.execute(Pen.TAKEN_BY_NOBODY);
    }

    private static int schema(Handle h) {
        return h.createQuery("SELECT max(CAST(version AS INTEGER)) FROM flyway_schema_history").mapTo(Integer.class).one();
    }

    private static EventLog awaitTurn(Succession host) throws InterruptedException {
        while (host.log() == null) {
            TimeUnit.MILLISECONDS.sleep(20);
        }
        return host.log();
    }

    private static Batch batch(Event event) {
        return new Batch(List.of(new Arrival(event.source(), event.sequence(), event.time(), event, null, ScriptedLane.json(event),
                Instant.EPOCH)), List.of(), List.of());
    }
}

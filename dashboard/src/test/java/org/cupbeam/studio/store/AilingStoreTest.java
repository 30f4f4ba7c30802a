package org.cupbeam.studio.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.cupbeam.event.Event;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.ingest.Batch;
import org.cupbeam.studio.ingest.NotNow;
import org.jdbi.v3.core.statement.UnableToExecuteStatementException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.postgresql.util.PSQLException;
import org.postgresql.util.PSQLState;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** What a database cannot do at present is told from what it will never do, by real refusals of SQLite's and by its codes. */
class AilingStoreTest {
    private static final Instant NOW = Instant.parse("2026-11-25T19:00:00Z");

    @TempDir
    private Path folder;
    private final ScriptedLane lane = new ScriptedLane("one", "j1");
    private Path file;
    private Store store;
    private Keeper keeper;

    @BeforeEach
    void open() {
        file = folder.resolve("studio.db");
        store = Store.open(Database.file(file));
        keeper = new Keeper(store);
        keeper.commit(batch(5));
    }

    @AfterEach
    void close() {
        store.close();
    }

    private Batch batch(int putts) {
        List<Event> events = Stream.generate(lane::puttsOutsideAnyRun).limit(putts).toList();
        return new Batch(events.stream().map(each -> new Arrival(each.source(), each.sequence(), each.time(), each, null,
                ScriptedLane.json(each), NOW)).toList(), List.of(), List.of());
    }

    private void tell(String pragma) {
        store.writing(h -> {
            try (Statement statement = h.getConnection().createStatement()) {
                statement.execute(pragma);
            } catch (SQLException e) {
                throw new AssertionError(e);
            }
        });
    }

    private int count(String what) {
        return store.read(h -> h.createQuery("SELECT count(*) FROM " + what).mapTo(Integer.class).one());
    }

    private void refusesThenKeeps(Batch batch, String words) {
        assertThatThrownBy(() -> keeper.commit(batch)).isInstanceOf(NotNow.class).hasMessageContaining(file.toString())
                .hasMessageContaining(words);
        assertThat(count("event")).isEqualTo(5);
        assertThat(count("attempt")).isEqualTo(5);
        keeper.commit(batch);
        assertThat(count("event")).isEqualTo(5 + batch.arrivals().size());
        assertThat(count("attempt")).isEqualTo(5 + batch.arrivals().size());
        assertThat(count("event WHERE problem IS NOT NULL")).isZero();
    }

    @Test
    void aFullFileTakesNothingOfABatchAndAllOfItOnceThereIsRoom() {
        int pages = store.read(h -> h.createQuery("PRAGMA page_count").mapTo(Integer.class).one());
        tell("PRAGMA max_page_count = " + pages);
        refusesThenKeeps(batch(200), "its disk is full");
    }

    @Test
    void aStoreThatAnotherProgramHoldsTakesNothingAndAllOnceItLetsGo() throws SQLException {
        tell("PRAGMA busy_timeout = 1");
        Batch batch = batch(20);
        try (Connection other = Database.file(file).writer(); Statement begin = other.createStatement()) {
            begin.execute("BEGIN IMMEDIATE");
            assertThatThrownBy(() -> keeper.commit(batch)).isInstanceOf(NotNow.class).hasMessageContaining("another program has it open");
            begin.execute("ROLLBACK");
        }
        keeper.commit(batch);
        assertThat(count("attempt")).isEqualTo(25);
    }

    @Test
    void whatAnEventSaysThatNoTableTakesIsNotTheStoresTrouble() {
        assertThatThrownBy(() -> store.writing(h -> h.execute("INSERT INTO studio (id, name) VALUES (7, NULL)")))
                .isInstanceOf(UnableToExecuteStatementException.class);
        keeper.commit(batch(1));
        assertThat(count("attempt")).isEqualTo(6);
    }

    @Test
    void eachCodeOfSqlitesIsTheStoresButThoseOfWhatIsWritten() {
        for (SQLiteErrorCode code : List.of(SQLiteErrorCode.SQLITE_FULL, SQLiteErrorCode.SQLITE_IOERR_WRITE, SQLiteErrorCode.SQLITE_IOERR_FSYNC,
                SQLiteErrorCode.SQLITE_READONLY_DBMOVED, SQLiteErrorCode.SQLITE_CANTOPEN, SQLiteErrorCode.SQLITE_BUSY_SNAPSHOT,
                SQLiteErrorCode.SQLITE_LOCKED, SQLiteErrorCode.SQLITE_CORRUPT, SQLiteErrorCode.SQLITE_NOTADB, SQLiteErrorCode.SQLITE_NOMEM,
                SQLiteErrorCode.SQLITE_PROTOCOL)) {
            assertThat(Ailment.words(new IllegalStateException(new SQLiteException("said", code)))).as(code.name()).contains("said");
        }
        for (SQLiteErrorCode code : List.of(SQLiteErrorCode.SQLITE_CONSTRAINT_UNIQUE, SQLiteErrorCode.SQLITE_TOOBIG,
                SQLiteErrorCode.SQLITE_MISMATCH)) {
            assertThat(Ailment.words(new IllegalStateException(new SQLiteException("said", code)))).as(code.name()).isNull();
        }
    }

    @Test
    void eachStateOfPostgresIsTheStoresButThoseOfWhatIsWritten() {
        assertThat(Ailment.words(new SQLException("no space", "53100"))).contains("disk is full");
        assertThat(Ailment.words(new PSQLException("gone", PSQLState.CONNECTION_FAILURE))).contains("its server runs");
        assertThat(Ailment.words(new SQLException("read-only", "25006"))).contains("may write");
        assertThat(Ailment.words(new SQLException("without a state"))).isNotNull();
        assertThat(Ailment.words(new PSQLException("null", PSQLState.NOT_NULL_VIOLATION))).isNull();
        assertThat(Ailment.words(new PSQLException("too large", PSQLState.NUMERIC_VALUE_OUT_OF_RANGE))).isNull();
    }
}

package org.cupbeam.studio.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.RandomAccessFile;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.cupbeam.studio.Studio;
import org.cupbeam.studio.seed.Seed;
import org.cupbeam.studio.seed.Size;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** A file that takes long to look through is read meanwhile, and nothing is written to it before nothing was found. */
class LargeStoreTest {
    private static final int LARGE_BYTES = 70 << 20;
    private static final int PAGE = 4096;

    @TempDir
    private static Path once;
    @TempDir
    private Path folder;
    private Path file;

    @BeforeAll
    static void keepMuch() {
        try (Store store = Store.open(Database.file(once.resolve("studio.db")))) {
            Seed.fill(store, Instant.parse("2026-11-25T12:00:00Z"), 4, new Size(1, 1, 0, 0));
            store.writing(h -> h.execute("INSERT INTO setting (name, value, set_ms) VALUES ('weight', zeroblob(?), 0)", LARGE_BYTES));
        }
    }

    @BeforeEach
    void copyIt() throws IOException {
        file = Files.copy(once.resolve("studio.db"), folder.resolve("studio.db"));
    }

    @Test
    void isWrittenToOnceNothingWasFound() {
        try (Store store = Store.open(Database.file(file))) {
            store.writing(h -> h.execute("DELETE FROM setting WHERE name = 'weight'"));
            assertThat(store.isLookedThrough()).isTrue();
            int planned = store.read(h -> h.select("SELECT count(*) FROM sqlite_stat1").mapTo(Integer.class).one());
            assertThat(planned).isPositive();
        }
    }

    @Test
    void isReadButNeverWrittenToWhereItIsDamaged() throws Exception {
        spoil("attempt");
        Path before = Files.copy(file, folder.resolve("before.db"));
        CompletableFuture<StoreTrouble> told = new CompletableFuture<>();
        try (Store store = Store.open(Database.file(file))) {
            store.whenDamaged(told::complete);
            int lanes = store.read(h -> h.select("SELECT count(*) FROM lane").mapTo(Integer.class).one());
            assertThat(lanes).isPositive();
            assertThatThrownBy(() -> store.writing(h -> h.execute("DELETE FROM setting"))).isInstanceOf(StoreTrouble.class)
                    .hasMessageStartingWith("store " + file + " is damaged (SQLite: ");
            assertThat(told.get(1, TimeUnit.MINUTES)).hasMessageContaining("restore your latest copy");
        }
        assertThat(Files.mismatch(file, before)).as("first byte that changed").isEqualTo(-1);
    }

    @Test
    void isLookedThroughFirstWhereItHasToBeMigrated() throws IOException {
        int root = root("attempt");
        try (Store store = Store.open(Database.file(file))) {
            store.writing(h -> h.execute("DELETE FROM flyway_schema_history WHERE installed_rank = "
                    + "(SELECT max(installed_rank) FROM flyway_schema_history)"));
        }
        overwrite(root);
        assertThatThrownBy(() -> Store.open(Database.file(file))).isInstanceOf(StoreTrouble.class)
                .hasMessageContaining("is damaged (SQLite: ");
    }

    @Test
    void stopsTheHostInWordsWhereItIsDamaged() throws IOException {
        spoil("attempt");
        StringWriter err = new StringWriter();
        int status = new CommandLine(new Studio()).setErr(new PrintWriter(err)).setOut(new PrintWriter(new StringWriter()))
                .execute("--data", folder.toString(), "--port", "0", "--mqtt-port", "0");
        assertThat(err.toString()).contains("store " + file + " is damaged (SQLite: ").contains("or name another store");
        assertThat(status).isEqualTo(2);
    }

    private void spoil(String table) throws IOException {
        overwrite(root(table));
    }

    private int root(String table) {
        try (Store store = Store.open(Database.file(file))) {
            return store.read(h -> h.select("SELECT rootpage FROM sqlite_master WHERE name = ?", table).mapTo(Integer.class).one());
        }
    }

    private void overwrite(int page) throws IOException {
        try (RandomAccessFile opened = new RandomAccessFile(file.toFile(), "rw")) {
            opened.seek((page - 1L) * PAGE);
            opened.write(0x77); // no kind of page that there is
        }
    }
}

package org.cupbeam.studio.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.Arrays;
import java.util.Random;
import org.cupbeam.studio.seed.Seed;
import org.cupbeam.studio.seed.Size;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A file that was cut or scribbled on is said to be so at the start, and stays as it is. */
class DamagedStoreTest {
    private static final int PAGE = 4096;
    private static final long SEED = Long.getLong("cupbeam.seed", System.nanoTime());

    @TempDir
    Path folder;
    private Path file;

    @BeforeEach
    void keepSomething() {
        file = folder.resolve("studio.db");
        try (Store store = Store.open(Database.file(file))) {
            Seed.fill(store, Instant.parse("2026-11-25T12:00:00Z"), 4, new Size(1, 1, 0, 0));
        }
    }

    @Test
    void opensWhenNothingIsWrong() {
        try (Store store = Store.open(Database.file(file))) {
            int attempts = store.read(h -> h.select("SELECT count(*) FROM attempt").mapTo(Integer.class).one());
            assertThat(attempts).isPositive();
        }
    }

    @Test
    void saysThatAFileWasCut() throws IOException {
        cutTo(Files.size(file) / 2 / PAGE * PAGE);
        assertRefused("is damaged (SQLite: ");
    }

    @Test
    void saysThatAFileWasCutToNothing() throws IOException {
        cutTo(0);
        assertRefused("is empty, 0 bytes long");
    }

    @Test
    void saysThatTheHeaderWasScribbledOn() throws IOException {
        overwrite(0, new byte[16]);
        assertRefused("is damaged (SQLite: ");
    }

    @Test
    void saysThatAnyPageWasScribbledOn() throws IOException {
        Random random = new Random(SEED);
        byte[] whole = Files.readAllBytes(file);
        for (int i = 0; i < 20; i++) {
            int page = 1 + random.nextInt(whole.length / PAGE - 1);
            byte[] noise = new byte[PAGE];
            random.nextBytes(noise);
            noise[0] = (byte) 0x77; // no kind of page that there is
            Files.write(file, whole);
            overwrite((long) page * PAGE, noise);
            assertRefused("is damaged (SQLite: ", "page " + page + ", seed " + SEED);
        }
    }

    @Test
    void doesNotBeginEmptyWhereOnlyTheLatestIsLeft() throws IOException {
        Files.write(folder.resolve("studio.db-wal"), new byte[1_000]);
        Files.delete(file);
        assertThatThrownBy(() -> Store.open(Database.file(file))).isInstanceOf(StoreTrouble.class)
                .hasMessageContaining("is not there, but what was written to it last is, in studio.db-wal");
        assertThat(file).doesNotExist();
    }

    @Test
    void beginsNewWhereAHostWasKilledWhileItMadeItsFirst() throws IOException {
        byte[] torn = Arrays.copyOf(Files.readAllBytes(file), 5 * PAGE);
        Files.delete(file);
        Files.write(folder.resolve("studio.db.begun"), torn);
        Files.write(folder.resolve("studio.db.begun-journal"), torn);
        try (Store store = Store.open(Database.file(file))) {
            int events = store.read(h -> h.select("SELECT count(*) FROM event").mapTo(Integer.class).one());
            assertThat(events).isZero();
        }
        assertThat(folder.resolve("studio.db.begun")).doesNotExist();
        assertThat(folder.resolve("studio.db.begun-journal")).doesNotExist();
    }

    private void assertRefused(String how) throws IOException {
        assertRefused(how, how);
    }

    private void assertRefused(String how, String as) throws IOException {
        byte[] before = Files.readAllBytes(file);
        assertThatThrownBy(() -> Store.open(Database.file(file))).as(as).isInstanceOf(StoreTrouble.class)
                .hasMessageStartingWith("store " + file + " " + how).hasMessageContaining("restore your latest copy")
                .hasMessageContaining("Nothing was begun in its place");
        assertThat(Files.readAllBytes(file)).as(as).isEqualTo(before);
    }

    private void cutTo(long length) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.truncate(length);
        }
    }

    private void overwrite(long at, byte[] with) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.write(ByteBuffer.wrap(with), at);
        }
    }
}

package org.cupbeam.studio.store.upkeep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Store;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A store is copied while it is written to; the copy is put back, and the lanes, which have gone on, bring the rest. */
class CopiesTest {
    private static final Clock WALL = Clock.fixed(Instant.parse("2026-11-25T20:00:00Z"), ZoneOffset.UTC);
    private static final Evenings EVENINGS = new Evenings(8);

    @TempDir
    private Path folder;

    private Path file(String name) {
        return folder.resolve(name);
    }

    @Test
    void aCopyIsMadeWhileTheStoreIsWrittenToAndIsOneFileOfItsOwnersAlone() throws Exception {
        Path store = file("studio.db");
        try (Store open = Store.open(Database.file(store))) {
            EVENINGS.sendTo(open, 50);
            Thread lanes = new Thread(() -> EVENINGS.sendTo(open, 100));
            lanes.start();
            for (int i = 0; i < 3; i++) {
                assertThat(Copies.backup(store, file("copy-" + i)).troubles()).isEmpty();
            }
            lanes.join();
            assertThat(Checkup.of(Database.file(store)).events()).isEqualTo(EVENINGS.all().size());
        }
        for (int i = 0; i < 3; i++) {
            Path copy = file("copy-" + i);
            assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(copy))).isEqualTo("rw-------");
            assertThat(Checkup.of(Database.file(copy)).events()).isBetween(EVENINGS.all().size() / 2L, (long) EVENINGS.all().size());
        }
        assertThat(names()).containsExactly("copy-0", "copy-1", "copy-2", "studio.db");
    }

    @Test
    void aFileThatIsThereIsNotOverwrittenAndADamagedStoreNotCopied() throws Exception {
        Path store = file("studio.db");
        EVENINGS.sendTo(store, 50);
        Path there = Files.writeString(file("there"), "somebody's");
        assertThatThrownBy(() -> Copies.backup(store, there)).isInstanceOf(FileAlreadyExistsException.class);
        assertThat(there).hasContent("somebody's");

        byte[] whole = Files.readAllBytes(store);
        Files.write(store, Arrays.copyOf(whole, whole.length / 2));
        assertThatThrownBy(() -> Copies.backup(store, file("copy"))).isInstanceOf(IOException.class);
        assertThat(names()).containsExactly("studio.db", "there");
    }

    @Test
    void aCopyOfMidEveningIsRestoredAndTheLanesBringTheRest() throws Exception {
        Path whole = file("whole.db");
        EVENINGS.sendTo(whole, 100);
        Path store = file("studio.db");
        EVENINGS.sendTo(store, 60);
        Checkup copied = Copies.backup(store, file("copy"));
        EVENINGS.sendTo(store, 90);
        byte[] destroyed = Arrays.copyOf(Files.readAllBytes(store), 20_000);
        Files.write(store, destroyed);

        Copies.Restored restored = Copies.restore(file("copy"), store, WALL);

        assertThat(restored.is()).isEqualTo(copied);
        assertThat(restored.aside()).isEqualTo(file("studio.db.before-restore-20261125T200000Z"));
        assertThat(Files.readAllBytes(restored.aside())).isEqualTo(destroyed);
        EVENINGS.sendTo(store, 100);
        assertThat(Evenings.story(store)).isEqualTo(Evenings.story(whole));
        assertThat(Checkup.of(Database.file(store)).troubles()).isEmpty();
        assertThat(Files.readAllBytes(file("copy"))).as("the copy is still one").isNotEmpty();
    }

    @Test
    void whatTheOldStoreHadInItsLogIsKeptWithIt() throws Exception {
        Path store = file("studio.db");
        EVENINGS.sendTo(store, 60);
        Copies.backup(store, file("copy"));
        Store killed = Store.open(Database.file(store));
        EVENINGS.sendTo(killed, 100);
        Path aside = Copies.restore(file("copy"), store, WALL).aside();
        killed.close();
        assertThat(Checkup.of(Database.file(aside)).events()).isEqualTo(EVENINGS.all().size());
    }

    @Test
    void aCopyThatIsNoneIsRefusedAndNothingIsChanged() throws Exception {
        Path store = file("studio.db");
        EVENINGS.sendTo(store, 60);
        Copies.backup(store, file("copy"));
        byte[] before = Files.readAllBytes(store);
        byte[] bytes = Files.readAllBytes(file("copy"));
        for (byte[] spoilt : new byte[][] {Arrays.copyOf(bytes, 3 * 4096), new byte[0], "no store".getBytes("US-ASCII")}) {
            Files.write(file("copy"), spoilt);
            assertThatThrownBy(() -> Copies.restore(file("copy"), store, WALL)).isInstanceOf(IOException.class)
                    .hasMessageContaining("is no sound copy of a store").hasMessageContaining("nothing was changed");
        }
        Files.write(file("copy"), bytes);
        Files.write(file("copy-wal"), new byte[100]);
        assertThatThrownBy(() -> Copies.restore(file("copy"), store, WALL)).hasMessageContaining("a part of it is in copy-wal");
        assertThat(Files.readAllBytes(store)).isEqualTo(before);
        assertThat(names()).containsExactly("copy", "copy-wal", "studio.db");
    }

    @Test
    void withoutAStoreACopyIsPutWhereItIsToBe() throws Exception {
        EVENINGS.sendTo(file("one.db"), 60);
        Checkup copied = Copies.backup(file("one.db"), file("copy"));
        assertThat(Copies.restore(file("copy"), file("studio.db"), WALL)).isEqualTo(new Copies.Restored(copied, null));
    }

    /** Without what SQLite leaves beside a store that it looked into. */
    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(each -> each.getFileName().toString()).filter(each -> !each.startsWith("studio.db-")).sorted().toList();
        }
    }
}

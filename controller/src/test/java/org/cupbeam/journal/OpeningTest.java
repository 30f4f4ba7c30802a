package org.cupbeam.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OpeningTest {
    @TempDir
    Path folder;
    private Path file;

    @BeforeEach
    void name() {
        file = folder.resolve("journal.db");
    }

    @Test
    void everySettingIsReadBackAsAsked() throws Exception {
        try (Journal<String> journal = Notes.open(file)) {
            assertThat(journal.database().settings()).containsAllEntriesOf(Map.of("journal_mode", "wal",
                    "synchronous", "2", "locking_mode", "exclusive", "foreign_keys", "1", "mmap_size", "0"));
            assertThat(journal.database().number("SELECT count(*) FROM pragma_table_list "
                    + "WHERE name IN ('about', 'event', 'input', 'state', 'answer') AND strict = 1")).isEqualTo(5);
            assertThat(folder.resolve("journal.db-shm")).doesNotExist();
        }
    }

    @Test
    void theSameJournalIsNotOpenedTwice() throws Exception {
        try (Journal<String> first = Notes.open(file)) {
            assertThatThrownBy(() -> Notes.open(file)).isInstanceOfSatisfying(JournalException.class,
                    e -> assertThat(e.kind()).isEqualTo(JournalException.Kind.IN_USE))
                    .hasMessage(file + ": is in use by process " + ProcessHandle.current().pid()
                            + "; stop that, or give this lane a folder of its own");
            assertThat(first.append(Notes.event())).isEqualTo(1);
            assertThatThrownBy(() -> Notes.open(file)).isInstanceOf(JournalException.class);
        }
        Notes.open(file).close();
    }

    @Test
    void aNewerJournalIsRefusedAndLeftAsItIs() throws Exception {
        Notes.open(file).close();
        sql("PRAGMA user_version = " + (Schema.VERSION + 1));
        byte[] before = Files.readAllBytes(file);
        assertThatThrownBy(() -> Notes.open(file)).isInstanceOfSatisfying(JournalException.class,
                e -> assertThat(e.kind()).isEqualTo(JournalException.Kind.NEWER))
                .hasMessage(file + ": was written by a later version (tables " + (Schema.VERSION + 1) + ", this one knows " + Schema.VERSION + "); "
                        + "run that version, or move the file away");
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
    }

    @Test
    void anotherProgramsDatabaseIsRefusedAndLeftAsItIs() throws Exception {
        sql("CREATE TABLE bookmarks (url TEXT)");
        byte[] before = Files.readAllBytes(file);
        assertThatThrownBy(() -> Notes.open(file)).isInstanceOfSatisfying(JournalException.class,
                e -> assertThat(e.kind()).isEqualTo(JournalException.Kind.FOREIGN));
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
    }

    @Test
    void aFolderThatCannotBeIsSaid() throws Exception {
        Files.writeString(file, "in the way");
        assertThatThrownBy(() -> Notes.open(file.resolve("journal.db"))).isInstanceOfSatisfying(JournalException.class,
                e -> assertThat(e.kind()).isEqualTo(JournalException.Kind.READ_ONLY))
                .hasMessageContaining("name a folder that this user may write");
        assertThat(file).hasContent("in the way");
    }

    @Test
    void aDamagedJournalIsMovedAsideAndANewOneBegins() throws Exception {
        String before = filled();
        try (RandomAccessFile torn = new RandomAccessFile(file.toFile(), "rw")) {
            for (long at = 4096; at < torn.length(); at += 512) {
                torn.seek(at);
                torn.write(new byte[256]);
            }
        }
        assertBeginsAnew(before);
    }

    @Test
    void aJournalCutShortIsMovedAsideAndANewOneBegins() throws Exception {
        String before = filled();
        try (RandomAccessFile torn = new RandomAccessFile(file.toFile(), "rw")) {
            torn.setLength(torn.length() / 2 + 100);
        }
        assertBeginsAnew(before);
    }

    @Test
    void aJournalThatIsNoDatabaseAtAllIsMovedAsideAndANewOneBegins() throws Exception {
        String before = filled();
        Files.write(file, new byte[8192]);
        assertBeginsAnew(before);
    }

    private String filled() throws JournalException {
        try (Journal<String> journal = Notes.open(file)) {
            journal.append(Collections.nCopies(200, Notes.event().with("input")));
            return journal.id();
        }
    }

    private void assertBeginsAnew(String idBefore) throws JournalException, IOException {
        try (Journal<String> journal = Notes.open(file)) {
            assertThat(journal.movedAside()).contains(folder.resolve("journal.db.corrupt-20261125T060000Z"));
            assertThat(journal.id()).isNotEqualTo(idBefore);
            assertThat(journal.inputs()).isEmpty();
            assertThat(journal.append(Notes.event())).isEqualTo(1);
        }
        try (Journal<String> journal = Notes.open(file)) {
            assertThat(journal.movedAside()).isEmpty();
            assertThat(journal.last()).isEqualTo(1);
        }
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files).extracting(each -> each.getFileName().toString())
                    .contains("journal.db", "journal.db.corrupt-20261125T060000Z");
        }
    }

    @Test
    void anOrdinaryStartDoesNotRunTheMigrationTool() throws Exception {
        filled();
        sql("DROP TABLE flyway_schema_history");
        Notes.open(file).close();
        assertThat(tables()).doesNotContain("flyway_schema_history").contains("event");
    }

    @Test
    void theMigrationToolKeepsItsHistoryInTheJournal() throws Exception {
        filled();
        assertThat(tables()).contains("flyway_schema_history");
    }

    private List<String> tables() throws SQLException {
        Database database = Database.open(file);
        try (database) {
            return List.of(database.text("SELECT group_concat(name) FROM sqlite_schema").split(","));
        }
    }

    private void sql(String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection(Database.url(file));
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }
}

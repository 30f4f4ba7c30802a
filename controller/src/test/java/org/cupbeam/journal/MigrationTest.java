package org.cupbeam.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MigrationTest {
    @TempDir
    Path folder;

    @Test
    void theLastScriptSetsTheVersionThatThisProgramKnows() throws Exception {
        Notes.open(folder.resolve("journal.db")).close();
        Database database = Database.open(folder.resolve("journal.db"));
        try (database) {
            assertThat(database.number("PRAGMA user_version")).isEqualTo(Schema.VERSION);
            assertThat(database.number("SELECT count(*) FROM flyway_schema_history")).isEqualTo(Schema.VERSION);
        }
    }

    @Test
    void aMigrationThatFailsChangesNothingAndIsSaid() throws Exception {
        Path file = folder.resolve("journal.db");
        Database before = Database.open(file);
        try (before) {
            before.execute("PRAGMA application_id = " + Database.APPLICATION_ID);
            before.execute("CREATE TABLE event (in_the_way TEXT)");
        }
        assertThatThrownBy(() -> Notes.open(file)).isInstanceOf(JournalException.class)
                .hasMessageStartingWith(file + ": its tables could not be brought up to date");
        Database after = Database.open(file);
        try (after) {
            assertThat(after.text("SELECT group_concat(name) FROM sqlite_schema")).isEqualTo("event");
        }
    }
}

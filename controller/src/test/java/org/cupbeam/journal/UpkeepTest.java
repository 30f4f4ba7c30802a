package org.cupbeam.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(120)
class UpkeepTest {
    private static final int EVENTS = 200;
    @TempDir
    Path folder;
    private Path file;
    private String id;

    @BeforeEach
    void fill() throws Exception {
        file = folder.resolve("journal.db");
        try (Journal<String> journal = Notes.open(file)) {
            journal.append(Collections.nCopies(EVENTS, Notes.event().with("input")));
            journal.stored(150);
            id = journal.id();
        }
    }

    private List<String> left(Path from) throws Exception {
        try (Journal<String> journal = Notes.open(from)) {
            return journal.leftBehind(10_000).stream()
                    .map(each -> new String(each.payload(), StandardCharsets.UTF_8)).toList();
        }
    }

    private List<String> written() throws Exception {
        try (Journal<String> journal = Notes.open(file)) {
            return journal.after(0, 10_000).stream()
                    .map(each -> new String(each.payload(), StandardCharsets.UTF_8)).toList();
        }
    }

    @Test
    void aSoundJournalIsSaidToBeAndNotTouched() throws Exception {
        byte[] before = Files.readAllBytes(file);
        assertThat(Upkeep.check(file)).isEqualTo(new Upkeep.State(null, id, EVENTS, 50, 0));
        assertThat(Upkeep.repair(file, Notes.NOW)).isNull();
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
    }

    @Test
    void aJournalIsCheckedAndCopiedWhileItIsWrittenTo() throws Exception {
        try (Journal<String> journal = Notes.open(file)) {
            journal.append(Notes.event());
            assertThat(Upkeep.check(file).events()).isEqualTo(EVENTS + 1);
            Upkeep.backup(file, folder.resolve("copy.db"));
            journal.append(Notes.event());
        }
        assertThat(folder.resolve("copy.db-wal")).doesNotExist();
        assertThat(Upkeep.check(folder.resolve("copy.db"))).isEqualTo(new Upkeep.State(null, id, EVENTS + 1, 51, 0));
        assertThatThrownBy(() -> Upkeep.backup(file, folder.resolve("copy.db")))
                .isInstanceOf(FileAlreadyExistsException.class);
    }

    @Test
    void aCopyThatIsRestoredGoesOnUnderAnIdOfItsOwnAndBringsBothItsEventsAndThoseThatWereThere() throws Exception {
        Path copy = folder.resolve("copy.db");
        Upkeep.backup(file, copy);
        try (Journal<String> journal = Notes.open(file)) {
            journal.append(List.of(Notes.event(), Notes.event()));
        }
        List<String> all = written();

        Upkeep.Begun begun = Upkeep.restore(copy, file, Notes.NOW);

        assertThat(begun.id()).isNotEqualTo(id);
        assertThat(begun.events()).isEqualTo(EVENTS + 2);
        assertThat(begun.aside()).exists();
        assertThat(left(file)).isEqualTo(all);
        try (Journal<String> journal = Notes.open(file)) {
            assertThat(journal.id()).isEqualTo(begun.id());
            assertThat(journal.append(Notes.event())).isEqualTo(1);
            assertThat(journal.inputs()).isEmpty();
        }
        assertThat(Upkeep.restore(copy, file, Notes.NOW).id()).as("once more").isNotIn(id, begun.id());
    }

    @Test
    void whatTheHostSaysThatItHasIsLeftNoLonger() throws Exception {
        Upkeep.restore(file, folder.resolve("other.db"), Notes.NOW);
        try (Journal<String> journal = Notes.open(folder.resolve("other.db"))) {
            journal.storedOf("somebody-elses", EVENTS);
            assertThat(journal.left()).isEqualTo(EVENTS);
            journal.storedOf(id, 150);
            assertThat(journal.left()).isEqualTo(EVENTS - 150);
            assertThat(journal.leftBehind(3)).extracting(Outbox.Row::sequence).containsExactly(151L, 152L, 153L);
            journal.storedOf(id, EVENTS);
            assertThat(journal.leftBehind(3)).isEmpty();
        }
    }

    @Test
    void aJournalInUseIsNotRepairedNorReplaced() throws Exception {
        Path copy = folder.resolve("copy.db");
        Upkeep.backup(file, copy);
        try (Journal<String> journal = Notes.open(file)) {
            assertThatThrownBy(() -> Upkeep.repair(file, Notes.NOW)).hasMessageContaining("is in use by process");
            assertThatThrownBy(() -> Upkeep.restore(copy, file, Notes.NOW)).hasMessageContaining("is in use by process");
            assertThat(journal.append(Notes.event())).isEqualTo(EVENTS + 1);
        }
    }

    /**
     * Every event that still stands whole in the bytes, with its check sum, is saved, and none is any other than what was
     * written; where none is lost, the journal simply goes on.
     */
    @Test
    void cutAtAnyByteItGoesOnWithWhatIsLeftAndSaysSo() throws Exception {
        List<String> all = written();
        byte[] whole = Files.readAllBytes(file);
        Random dice = seeded();
        for (int i = 0; i < 60; i++) {
            damaged(Arrays.copyOf(whole, 1 + dice.nextInt(whole.length - 1)), all);
        }
    }

    @Test
    void withBytesFlippedItGoesOnWithWhatIsLeftAndSaysSo() throws Exception {
        List<String> all = written();
        byte[] whole = Files.readAllBytes(file);
        Random dice = seeded();
        for (int i = 0; i < 100; i++) {
            byte[] flipped = whole.clone();
            for (int flips = 1 << dice.nextInt(8); flips > 0; flips--) {
                flipped[dice.nextInt(flipped.length)] ^= (byte) (1 << dice.nextInt(8));
            }
            damaged(flipped, all);
        }
    }

    /** A flipped bit made one; the lane could not begin any more. */
    @Test
    void anIdThatNoJournalCanHaveIsDamage() throws Exception {
        List<String> all = written();
        try (var database = DriverManager.getConnection("jdbc:sqlite:" + file); var change = database.createStatement()) {
            change.execute("UPDATE about SET journal = '8d0b/a7c'");
        }
        damaged(Files.readAllBytes(file), all);
        try (Journal<String> journal = Notes.open(file)) {
            assertThat(journal.id()).isNotEqualTo("8d0b/a7c");
            assertThat(journal.left()).isEqualTo(EVENTS);
        }
    }

    @Test
    void aLetterThatWasFlippedInATextThatStillReadsIsNoticedAndNothingElseIsLost() throws Exception {
        List<String> all = written();
        byte[] bytes = Files.readAllBytes(file);
        String text = new String(bytes, StandardCharsets.ISO_8859_1);
        int digit = text.indexOf(all.get(122)) + all.get(122).indexOf("\"time\":\"20") + 9;
        bytes[digit] ^= 1; // another year: it reads as well as before
        Files.write(file, bytes);

        assertThat(Upkeep.check(file).trouble()).isEqualTo("event 123 is not as it was written: it does not have its check sum");
        assertThatThrownBy(() -> Upkeep.backup(file, folder.resolve("copy.db"))).hasMessageContaining("is damaged");
        Upkeep.Begun begun = Upkeep.repair(file, Notes.NOW);
        assertThat(begun.events()).isEqualTo(EVENTS - 1);
        assertThat(left(file)).isSubsetOf(all).doesNotContain(all.get(122));
    }

    @Test
    void aJournalFromBeforeThereWereCheckSumsGoesOnAndItsNewEventsHaveThem() throws Exception {
        Path old = folder.resolve("old.db");
        org.sqlite.SQLiteDataSource source = new org.sqlite.SQLiteDataSource();
        source.setUrl(Database.url(old));
        org.flywaydb.core.Flyway.configure().dataSource(source).locations("classpath:org/cupbeam/journal").target("2").load().migrate();
        List<String> all = written();
        try (var database = DriverManager.getConnection("jdbc:sqlite:" + old); var change = database.createStatement();
                var insert = database.prepareStatement("INSERT INTO event (sequence, payload) VALUES (?, ?)")) {
            change.execute("INSERT INTO about (one, journal) VALUES (1, '" + id + "')");
            for (int i = 0; i < 20; i++) {
                insert.setLong(1, i + 1);
                insert.setBytes(2, all.get(i).getBytes(StandardCharsets.UTF_8));
                insert.executeUpdate();
            }
        }
        assertThat(Upkeep.check(old)).as("before a lane of this version was at it").isEqualTo(new Upkeep.State(null, id, 20, 20, 0));
        Upkeep.restore(old, folder.resolve("other.db"), Notes.NOW);
        assertThat(left(folder.resolve("other.db"))).isEqualTo(all.subList(0, 20));

        try (Journal<String> journal = Notes.open(old)) {
            assertThat(journal.id()).isEqualTo(id);
            assertThat(journal.append(Notes.event())).isEqualTo(21);
            assertThat(texts(journal.after(0, 20))).isEqualTo(all.subList(0, 20));
            assertThat(journal.database().number("SELECT count(*) FROM event WHERE check_sum IS NOT NULL")).isEqualTo(1);
        }
        assertThat(Upkeep.check(old).trouble()).isNull();
    }

    /** Without the column's name nothing would be compared, and whatever reads be taken for what was written. */
    @Test
    void aCheckSumWhoseColumnHasLostItsNameIsComparedNevertheless() throws Exception {
        List<String> all = written();
        String bytes = Files.readString(file, StandardCharsets.ISO_8859_1);
        Files.write(file, bytes.replace("check_sum", "check_swm").replace("cupbeam.clock", "cupream.clock").getBytes(StandardCharsets.ISO_8859_1));
        assertThat(Salvage.of(file).values()).extracting(each -> new String(each, StandardCharsets.UTF_8)).isSubsetOf(all);
    }

    private static List<String> texts(List<Outbox.Row> rows) {
        return rows.stream().map(each -> new String(each.payload(), StandardCharsets.UTF_8)).toList();
    }

    private static String summed(String event) {
        return event + CheckSum.of(event.getBytes(StandardCharsets.UTF_8));
    }

    private static Random seeded() {
        long seed = Long.getLong("cupbeam.seed", System.nanoTime());
        System.out.println("UpkeepTest: seed " + seed);
        return new Random(seed);
    }

    private void damaged(byte[] bytes, List<String> all) throws Exception {
        for (Path each : Files.list(folder).filter(each -> each.getFileName().toString().startsWith("journal.db")).toList()) {
            Files.delete(each);
        }
        Files.write(file, bytes);
        String trouble = Upkeep.check(file).trouble();
        try (Journal<String> journal = Notes.open(file)) {
            if (journal.movedAside().isEmpty()) {
                assertThat(journal.last()).as("it goes on as it was, having said: " + trouble).isPositive();
                assertThat(texts(journal.after(0, 10_000))).as("nothing but what was written").isSubsetOf(all);
                return;
            }
            assertThat(trouble).isNotNull();
            assertThat(Files.readAllBytes(journal.movedAside().get())).as("kept as it was").isEqualTo(bytes);
            String text = new String(bytes, StandardCharsets.ISO_8859_1);
            assertThat(journal.leftBehind(10_000)).extracting(Outbox.Row::sequence).containsAll(
                    LongStream.rangeClosed(1, all.size()).filter(i -> text.contains(summed(all.get((int) i - 1)))).boxed().toList());
            assertThat(texts(journal.leftBehind(10_000))).as("nothing but what was written").isSubsetOf(all);
        } catch (JournalException refused) {
            assertThat(refused.kind()).as(refused.getMessage())
                    .isIn(JournalException.Kind.FOREIGN, JournalException.Kind.NEWER, JournalException.Kind.FAILED,
                            JournalException.Kind.DAMAGED);
            assertThat(Files.readAllBytes(file)).as("refused, and left as it is").isEqualTo(bytes);
        }
    }
}

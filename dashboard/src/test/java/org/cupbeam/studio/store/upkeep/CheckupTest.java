package org.cupbeam.studio.store.upkeep;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import org.cupbeam.studio.seed.Seed;
import org.cupbeam.studio.seed.Size;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Store;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is wrong with a store is said, each kind in its words; a sound one is said to be, and left as it is to the byte. */
class CheckupTest {
    private static final Evenings EVENINGS = new Evenings(8);

    @TempDir
    private Path folder;
    private Path file;

    @BeforeEach
    void fill() {
        file = folder.resolve("studio.db");
        EVENINGS.sendTo(file, 100);
    }

    private Checkup look() {
        return Checkup.of(Database.file(file));
    }

    private void spoil(String... statements) {
        try (Store store = Store.open(Database.file(file))) {
            store.writing(h -> {
                h.execute("PRAGMA defer_foreign_keys = ON");
                for (String each : statements) {
                    assertThat(h.execute(each)).as(each).isPositive();
                }
            });
        }
    }

    private void says(String words) {
        assertThat(look().troubles()).anySatisfy(each -> assertThat(each).contains(words));
    }

    @Test
    void aSoundStoreIsSaidToBeAndNotTouched() throws Exception {
        byte[] before = Files.readAllBytes(file);

        Checkup is = look();

        assertThat(is.troubles()).isEmpty();
        assertThat(is.events()).isEqualTo(EVENINGS.all().size());
        assertThat(is.missing()).isZero();
        assertThat(is.isOfThisVersion()).isTrue();
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
    }

    @Test
    void aStoreThatIsWrittenToIsCheckedWithWhatIsInItsLog() {
        Path other = folder.resolve("other.db");
        try (Store open = Store.open(Database.file(other))) {
            EVENINGS.sendTo(open, 50);
            Checkup is = Checkup.of(Database.file(other));
            assertThat(is.troubles()).isEmpty();
            assertThat(is.events()).isEqualTo(EVENINGS.all().size() / 2);
        }
    }

    @Test
    void aMadeUpYearWithWhatPeopleCorrectedInItIsSound() {
        Path year = folder.resolve("year.db");
        try (Store store = Store.open(Database.file(year))) {
            Seed.fill(store, Instant.parse("2026-11-25T12:00:00Z"), 4, new Size(6, 8, 2, 2));
        }
        Checkup is = Checkup.of(Database.file(year));
        assertThat(is.troubles()).isEmpty();
        assertThat(is.attempts()).isGreaterThan(1_000);
    }

    @Test
    void aLetterThatWasFlippedWithinAnEventIsSeen() throws Exception {
        byte[] bytes = Files.readAllBytes(file);
        String text = new String(bytes, java.nio.charset.StandardCharsets.ISO_8859_1);
        bytes[text.indexOf("\"finish_mm\":", bytes.length / 2) + 12] ^= 1; // another digit: it reads as well as before
        Files.write(file, bytes);
        says("is not as it was kept: its text does not have its check sum");
    }

    @Test
    void anEventThatIsGoneIsSaid() {
        spoil("DELETE FROM event WHERE journal_id = 1 AND sequence BETWEEN 20 AND 22");
        says("lane bay-one, journal journalone: events 20 to 22 are not there, and not noted as missing");
        spoil("INSERT INTO missing (journal_id, from_sequence, to_sequence, noted_ms) VALUES (1, 20, 22, 0)");
        assertThat(look().troubles()).noneMatch(each -> each.contains("are not there")).anyMatch(each -> each.contains("have no event"));
        assertThat(look().missing()).isEqualTo(3);
    }

    @Test
    void aLaneThatWasToldMoreThanIsKeptIsSaid() {
        spoil("UPDATE journal SET stored = stored + 5 WHERE id = 2");
        says("lane bay-two, journal journaltwo: its events go up to");
    }

    @Test
    void anAttemptThatIsNotItsEventsIsSaid() {
        spoil("UPDATE attempt SET finish_mm = finish_mm + 1 WHERE id = (SELECT min(id) FROM attempt WHERE holed = 0)");
        says("and its attempt are not the same");
    }

    @Test
    void anAttemptThatIsGoneIsSaidAndSoAreTheCountsWithoutIt() {
        spoil("DELETE FROM attempt WHERE id = (SELECT min(id) FROM attempt WHERE counts = 1)");
        says("is an attempt's, and the attempt is not there");
        says("1 quarter hours of use are not what the attempts say");
    }

    @Test
    void aScoreThatIsNotWhatTheAttemptsSayIsSaid() {
        spoil("UPDATE run SET holed = holed + 1 WHERE id = 1");
        says("1 runs' scores are not what their attempts say");
    }

    @Test
    void whatIsNoStoreIsSaidToBeNone() throws Exception {
        Files.write(file, new byte[0]);
        says("is empty, 0 bytes long");
        Files.write(file, Arrays.copyOf("not a store".getBytes(java.nio.charset.StandardCharsets.US_ASCII), 8_192));
        says("file is not a database");
    }
}

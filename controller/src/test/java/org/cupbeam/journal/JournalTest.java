package org.cupbeam.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import org.cupbeam.event.Answer;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.Data;
import org.cupbeam.event.Event;
import org.cupbeam.event.EventJson;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JournalTest {
    @TempDir
    Path folder;

    private Journal<String> open() throws JournalException {
        return Notes.open(folder.resolve("journal.db"));
    }

    @Test
    void sequencesBeginAtOneAndGoOnWhenOpenedAgain() throws JournalException {
        String id;
        try (Journal<String> journal = open()) {
            id = journal.id();
            assertThat(journal.last()).isZero();
            assertThat(journal.append(Notes.event())).isEqualTo(1);
            assertThat(journal.append(List.of(Notes.event(), Notes.event()))).isEqualTo(3);
        }
        try (Journal<String> journal = open()) {
            assertThat(journal.id()).isEqualTo(id).matches("[0-9a-f]{32}");
            assertThat(journal.append(Notes.event())).isEqualTo(4);
        }
    }

    @Test
    void eachJournalIsBornWithAnIdOfItsOwn() throws JournalException {
        try (Journal<String> one = open(); Journal<String> other = Notes.open(folder.resolve("other.db"))) {
            assertThat(one.id()).isNotEqualTo(other.id());
        }
    }

    @Test
    void anEventIsKeptAsItIsPublished() throws JournalException, BadMessage {
        try (Journal<String> journal = open()) {
            journal.append(Notes.event());
            List<Outbox.Row> rows = journal.after(0, 8);
            assertThat(rows).hasSize(1);
            assertThat(EventJson.decode(rows.get(0).payload())).isEqualTo(
                    new Event(journal.source(), 1, Notes.NOW, new Data.Clock(Notes.STAMP, Notes.NOW)));
        }
    }

    @Test
    void theOutboxGivesTheOldestFirstAndNoMoreThanAskedFor() throws JournalException {
        try (Journal<String> journal = open()) {
            journal.append(Collections.nCopies(20, Notes.event()));
            assertThat(journal.after(5, 3)).extracting(Outbox.Row::sequence).containsExactly(6L, 7L, 8L);
            assertThat(journal.after(20, 3)).isEmpty();
        }
    }

    @Test
    void howFarTheHostStoredIsRememberedAndMayGoBack() throws JournalException {
        try (Journal<String> journal = open()) {
            journal.append(Collections.nCopies(20, Notes.event()));
            assertThat(journal.stored(15)).isTrue();
            assertThat(journal.stored(12)).isTrue();
        }
        try (Journal<String> journal = open()) {
            assertThat(journal.stored()).isEqualTo(12);
        }
    }

    @Test
    void aHostThatClaimsToHaveStoredWhatWasNeverWrittenIsNotBelieved() throws JournalException {
        try (Journal<String> journal = open()) {
            journal.append(Notes.event());
            assertThat(journal.stored(2)).isFalse();
            assertThat(journal.stored()).isZero();
        }
    }

    @Test
    void inputsComeBackSinceTheLastReset() throws JournalException {
        try (Journal<String> journal = open()) {
            journal.append(Notes.event().with("a"));
            journal.append(Notes.event().with("b").withReset());
            journal.append(Notes.event());
            journal.append(Entry.<String>empty().with("c"));
        }
        try (Journal<String> journal = open()) {
            assertThat(journal.inputs()).containsExactly("b", "c");
            journal.append(Entry.<String>empty().withReset());
            assertThat(journal.inputs()).isEmpty();
            journal.append(Entry.<String>empty().with("d"));
            assertThat(journal.inputs()).containsExactly("d");
        }
    }

    @Test
    void smallThingsAreRemembered() throws JournalException {
        try (Journal<String> journal = open()) {
            journal.append(Notes.event().with("stimp", "10.1"));
            journal.append(Entry.<String>empty().with("stimp", "10.2"));
        }
        try (Journal<String> journal = open()) {
            assertThat(journal.state("stimp")).contains("10.2");
            assertThat(journal.state("never")).isEmpty();
        }
    }

    @Test
    void theLastAnswersAreRememberedAndTheFirstOfThemStands() throws JournalException {
        try (Journal<String> journal = open()) {
            for (int i = 0; i <= Journal.ANSWERS; i++) {
                journal.append(Entry.<String>empty().with(new Answer("c-" + i, i % 2 == 0, "r", i)));
            }
            journal.append(Entry.<String>empty().with(new Answer("c-9", true, null, 999)));
            assertThat(journal.answer("c-0")).isEmpty();
            assertThat(journal.answer("c-1")).contains(new Answer("c-1", false, "r", 1));
            assertThat(journal.answer("c-9")).contains(new Answer("c-9", false, "r", 9));
        }
    }

    @Test
    void everyConnectionHasANumberOfItsOwn() throws JournalException {
        long before;
        try (Journal<String> journal = open()) {
            before = journal.nextConnection();
            assertThat(journal.nextConnection()).isGreaterThan(before);
        }
        try (Journal<String> journal = open()) {
            assertThat(journal.nextConnection()).isGreaterThan(before + 1);
        }
    }

    @Test
    void onAFullDiskNothingIsHalfDoneAndItGoesOnWhenThereIsRoomAgain() throws Exception {
        try (Journal<String> journal = open()) {
            journal.append(Notes.event().with("a"));
            Database database = journal.database();
            database.execute("PRAGMA max_page_count = " + database.number("PRAGMA page_count"));
            Entry<String> large = Notes.event().with("b").with("k", "x".repeat(100_000)).with(
                    new Answer("c", true, null, 2));
            assertThatThrownBy(() -> journal.append(large)).isInstanceOfSatisfying(JournalException.class,
                    e -> assertThat(e.kind()).isEqualTo(JournalException.Kind.FULL))
                    .hasMessageContaining("journal.db: the disk is full").hasMessageEndingWith("; make room");
            assertThat(journal.last()).isEqualTo(1);
            assertThat(journal.after(0, 9)).hasSize(1);
            assertThat(journal.inputs()).containsExactly("a");
            assertThat(journal.answer("c")).isEmpty();
            database.execute("PRAGMA max_page_count = 100000");
            assertThat(journal.append(large)).isEqualTo(2);
            assertThat(journal.inputs()).containsExactly("a", "b");
        }
    }

    @Test
    void aDiskThatTurnsReadOnlyIsSaid() throws Exception {
        try (Journal<String> journal = open()) {
            journal.database().execute("PRAGMA query_only = ON");
            assertThatThrownBy(() -> journal.append(Notes.event())).isInstanceOfSatisfying(JournalException.class,
                    e -> assertThat(e.kind()).isEqualTo(JournalException.Kind.READ_ONLY))
                    .hasMessageContaining("cannot be written");
        }
    }

    @Test
    void tidyingForgetsOnlyWhatIsBothStoredAndOld() throws JournalException {
        try (Journal<String> journal = open()) {
            for (int i = 0; i < 11; i++) {
                journal.append(Collections.nCopies(1000, Notes.event().with("i")));
            }
            journal.append(Entry.<String>empty().withReset().with("last"));
            journal.tidy();
            assertThat(journal.after(0, 1)).extracting(Outbox.Row::sequence).containsExactly(1L);
            journal.stored(500);
            journal.tidy();
            assertThat(journal.after(0, 1)).extracting(Outbox.Row::sequence).containsExactly(501L);
            journal.stored(11_000);
            journal.tidy();
            assertThat(journal.after(0, 1)).extracting(Outbox.Row::sequence).containsExactly(1001L);
            assertThat(journal.inputs()).containsExactly("last");
            assertThat(journal.append(Notes.event())).isEqualTo(11_001);
        }
    }
}

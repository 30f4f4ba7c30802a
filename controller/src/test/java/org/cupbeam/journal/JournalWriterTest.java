package org.cupbeam.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Data;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JournalWriterTest {
    @TempDir
    Path folder;
    private final AtomicLong clock = new AtomicLong();
    private final List<String> written = new ArrayList<>();
    private Journal<String> journal;
    private JournalWriter<String> writer;

    @BeforeEach
    void open() throws JournalException {
        journal = Notes.open(folder.resolve("journal.db"));
        writer = new JournalWriter<>(journal, clock::get,
                (entry, sequence) -> written.add(entry.input() + "@" + sequence));
    }

    @AfterEach
    void close() throws JournalException {
        journal.close();
    }

    @Test
    void entriesAreWrittenInOrderAndToldOfWhenTheyAreOnTheDisk() throws JournalException {
        writer.offer(Notes.event().with("a"));
        writer.offer(Entry.<String>empty().with("b"));
        writer.offer(Notes.event().with(Notes.NOW, new Data.Clock(Notes.STAMP, Notes.NOW)).with("c"));
        assertThat(written).isEmpty();
        assertThat(writer.doWork()).isEqualTo(1);
        assertThat(written).containsExactly("a@1", "b@1", "c@3");
        assertThat(journal.inputs()).containsExactly("a", "b", "c");
        assertThat(writer.doWork()).isZero();
    }

    @Test
    void aFullQueueTakesNoMore() {
        for (int i = 0; i < JournalWriter.QUEUE; i++) {
            assertThat(writer.offer(Notes.event())).isTrue();
        }
        assertThat(writer.offer(Notes.event())).isFalse();
        writer.doWork();
        assertThat(writer.offer(Notes.event())).isTrue();
    }

    @Test
    void aFailingDiskIsSaidAndTriedAgainEverySecondUntilAllIsWritten() throws Exception {
        journal.database().execute("PRAGMA query_only = ON");
        writer.offer(Notes.event().with("a"));
        assertThat(writer.doWork()).isZero();
        assertThat(writer.fault().kind()).isEqualTo(JournalException.Kind.READ_ONLY);
        journal.database().execute("PRAGMA query_only = OFF");
        writer.offer(Notes.event().with("b"));
        clock.addAndGet(TimeUnit.MILLISECONDS.toNanos(999));
        assertThat(writer.doWork()).isZero();
        clock.addAndGet(TimeUnit.MILLISECONDS.toNanos(1));
        writer.doWork();
        writer.doWork();
        assertThat(written).containsExactly("a@1", "b@2");
        assertThat(writer.fault()).isNull();
    }

    @Test
    void anEntryThatMakesNoSenseHoldsUpNoOther() throws JournalException {
        Entry<String> senseless = Entry.<String>empty().with(new Answer("c", true, null, -1));
        writer.offer(Notes.event().with("a"));
        writer.offer(senseless);
        writer.offer(Notes.event().with("b"));
        for (int i = 0; i < 5; i++) {
            writer.doWork();
        }
        assertThat(written).containsExactly("a@1", "b@2");
        assertThat(writer.dropped()).isEqualTo(1);
    }

    @Test
    void onItsOwnThreadItWritesWithoutBeingStepped() {
        writer.start();
        writer.offer(Notes.event().with("a"));
        writer.close();
        assertThat(written).containsExactly("a@1");
        assertThat(journal.last()).isEqualTo(1);
    }

    @Test
    void aQuietMomentIsUsedToTidyUpOnceThatIsWorthIt() throws Exception {
        write(10);
        journal.stored(1);
        assertThat(storedOnDiskAfterAQuietMoment()).isZero();
        write(290);
        journal.stored(200);
        assertThat(storedOnDiskAfterAQuietMoment()).isEqualTo(200);
    }

    private void write(int entries) {
        for (int i = 0; i < entries; i++) {
            writer.offer(Notes.event());
            writer.doWork();
        }
    }

    private long storedOnDiskAfterAQuietMoment() throws Exception {
        clock.addAndGet(TimeUnit.SECONDS.toNanos(2));
        writer.doWork();
        return journal.database().number("SELECT stored FROM about");
    }
}

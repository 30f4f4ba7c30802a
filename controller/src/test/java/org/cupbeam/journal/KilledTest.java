package org.cupbeam.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Another process writes, and is killed in the middle of it. */
@Timeout(60)
class KilledTest {
    @TempDir
    Path folder;

    @Test
    void whateverWasAcknowledgedIsThereAfterAKillAndTheSequenceGoesOn() throws Exception {
        Path file = folder.resolve("journal.db");
        Notes.open(file).close();
        long expected = 0;
        for (int round = 0; round < 3; round++) {
            Process child = child(file);
            List<String> acknowledged = read(child, 100 + 37 * round);
            kill(child);
            acknowledged.addAll(read(child, Integer.MAX_VALUE));
            assertThat(acknowledged).first().isEqualTo(Long.toString(expected + 1));
            long last = Long.parseLong(acknowledged.get(acknowledged.size() - 1));
            try (Journal<String> journal = Notes.open(file)) {
                assertThat(journal.movedAside()).isEmpty();
                assertThat(journal.last()).isGreaterThanOrEqualTo(last);
                List<Outbox.Row> rows = journal.after(0, 1_000_000);
                for (int i = 0; i < rows.size(); i++) {
                    assertThat(rows.get(i).sequence()).isEqualTo(i + 1);
                }
                assertThat(journal.inputs()).as("an input for each event, or neither").hasSize(rows.size());
                expected = journal.last();
            }
        }
    }

    @Test
    void aWriteAheadLogTornAtItsEndLosesNoMoreThanWhatWasTorn() throws Exception {
        Path file = folder.resolve("journal.db");
        Notes.open(file).close();
        Process child = child(file);
        List<String> acknowledged = read(child, 50);
        kill(child);
        acknowledged.addAll(read(child, Integer.MAX_VALUE));
        try (RandomAccessFile log = new RandomAccessFile(folder.resolve("journal.db-wal").toFile(), "rw")) {
            log.setLength(log.length() - 2000);
        }
        try (Journal<String> journal = Notes.open(file)) {
            assertThat(journal.movedAside()).isEmpty();
            assertThat(journal.last()).isGreaterThan(Long.parseLong(acknowledged.get(acknowledged.size() - 1)) - 2);
            assertThat(journal.after(0, 1_000_000)).hasSize((int) journal.last());
        }
    }

    @Test
    void aJournalInUseByAnotherProcessIsRefusedWithThatProcess() throws Exception {
        Path file = folder.resolve("journal.db");
        Process child = child(file);
        read(child, 1);
        assertThatThrownBy(() -> Notes.open(file))
                .hasMessageStartingWith(file + ": is in use by process " + child.pid());
        kill(child);
        Notes.open(file).close();
    }

    /** Appends for as long as it lives, an input with each event, and says what is on the disk. */
    public static void main(String[] args) throws JournalException {
        try (Journal<String> journal = Notes.open(Path.of(args[0]))) {
            for (int i = 0; i < 1_000_000; i++) {
                System.out.println(journal.append(Notes.event().with("input")));
            }
        }
    }

    private static Process child(Path file) throws IOException {
        return new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp", System.getProperty("java.class.path"), KilledTest.class.getName(), file.toString())
                .redirectError(ProcessBuilder.Redirect.DISCARD).start();
    }

    /** By its handle: ending the process object itself would also close the pipe, with what is still in it. */
    private static void kill(Process child) throws InterruptedException {
        assertThat(child.toHandle().destroyForcibly()).isTrue();
        assertThat(child.waitFor(10, TimeUnit.SECONDS)).isTrue();
        assertThat(child.exitValue()).as("by signal 9").isEqualTo(128 + 9);
    }

    private static List<String> read(Process child, int lines) throws IOException {
        List<String> read = new ArrayList<>();
        BufferedReader out = child.inputReader();
        for (String line = ""; read.size() < lines && (line = out.readLine()) != null; ) {
            read.add(line);
        }
        return read;
    }
}

package org.cupbeam.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.Collections;
import org.cupbeam.event.Data;
import org.cupbeam.event.Stamp;
import org.cupbeam.journal.Entry;
import org.cupbeam.journal.InputCodec;
import org.cupbeam.journal.Journal;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class JournalCommandTest {
    private static final Instant NOW = Instant.parse("2026-11-25T06:00:00Z");
    @TempDir
    private Path folder;
    private Path file;
    private final StringWriter said = new StringWriter();

    private static final class Plain implements InputCodec<String> {
        @Override
        public String encode(String input) {
            return input;
        }

        @Override
        public String decode(String text) {
            return text;
        }
    }

    @BeforeEach
    void fill() throws Exception {
        file = folder.resolve("north.bay-3.db");
        try (Journal<String> journal = open(file)) {
            journal.append(Collections.nCopies(40, Entry.<String>empty().with(NOW,
                    new Data.Clock(new Stamp("boot", 1, Stamp.Clock.SYNCHRONISED), NOW))));
        }
    }

    private static Journal<String> open(Path file) throws Exception {
        return Journal.open(file, "north", "bay-3", new Plain(), NOW);
    }

    private int run(String... arguments) {
        said.getBuffer().setLength(0);
        PrintWriter to = new PrintWriter(said, true);
        return new CommandLine(new JournalCommand()).setOut(to).setErr(to)
                .setExecutionExceptionHandler((failure, command, parsed) -> Cupbeam.explain(failure, command.getErr()))
                .execute(arguments);
    }

    @Test
    void aSoundJournalAndADamagedOneAreToldApartByTheExitStatus() throws Exception {
        assertThat(run("check", file.toString())).isZero();
        assertThat(said.toString()).contains("is sound", "40 events, 40 not yet known");
        byte[] bytes = Files.readAllBytes(file);
        Files.write(file, Arrays.copyOf(bytes, bytes.length / 2));
        assertThat(run("check", file.toString())).isEqualTo(1);
        assertThat(said.toString()).contains("is damaged", "journal repair");
    }

    @Test
    void aDamagedJournalIsRepairedAndItsEventsCounted() throws Exception {
        assertThat(run("repair", file.toString())).isZero();
        assertThat(said.toString()).contains("is sound, and stays as it is");
        byte[] bytes = Files.readAllBytes(file);
        bytes[20] ^= 8;
        Arrays.fill(bytes, 0, 90, (byte) 0);
        Files.write(file, bytes);
        assertThat(run("repair", file.toString())).isZero();
        assertThat(said.toString()).contains("Saved 40 events", "The damaged file is " + file + ".corrupt-");
        assertThat(run("check", file.toString())).isZero();
        assertThat(said.toString()).contains("0 events", "and 40 of earlier journals");
    }

    @Test
    void aCopyIsMadeBesideARunningLaneAndRestored() throws Exception {
        Path copy = folder.resolve("copy.db");
        try (Journal<String> running = open(file)) {
            assertThat(running.last()).isEqualTo(40);
            assertThat(run("backup", file.toString(), copy.toString())).isZero();
            assertThat(said.toString()).contains("with 40 events");
            assertThat(run("restore", copy.toString(), file.toString())).isEqualTo(2);
            assertThat(said.toString()).contains("is in use by process");
        }
        assertThat(run("backup", file.toString(), copy.toString())).isEqualTo(2);
        assertThat(said.toString()).contains("is there already");
        assertThat(run("restore", copy.toString(), file.toString())).isZero();
        assertThat(said.toString()).contains("Took over 40 events", "What was there is now " + file + ".replaced-");
    }

    @Test
    void whatMakesNoSenseIsRefusedWithStatusTwo() {
        assertThat(run("check", folder.resolve("none.db").toString())).isEqualTo(2);
        assertThat(said.toString()).contains("there is no such file").doesNotContain("\tat ");
        assertThat(run("check")).isEqualTo(2);
        assertThat(run("restore", folder.resolve("none.db").toString(), file.toString())).isEqualTo(2);
        assertThat(run("polish", file.toString())).isEqualTo(2);
        assertThat(run("--help")).isZero();
        assertThat(said.toString()).contains("check", "backup", "repair", "restore");
    }

    @Test
    void aCopyThatHoldsNothingIsNotRestored() throws Exception {
        byte[] before = Files.readAllBytes(file);
        Path empty = Files.writeString(folder.resolve("copy.db"), "nothing");
        assertThat(run("restore", empty.toString(), file.toString())).isEqualTo(1);
        assertThat(said.toString()).contains("holds no event that can be read");
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
    }
}

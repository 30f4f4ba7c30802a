package org.cupbeam.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.cupbeam.event.Data;
import org.cupbeam.event.Stamp;
import org.cupbeam.fuzz.Fuzz;
import org.cupbeam.fuzz.Target;
import org.cupbeam.journal.Entry;
import org.cupbeam.journal.InputCodec;
import org.cupbeam.journal.Journal;
import picocli.CommandLine;

/** Files that are no journal any more, given to each of the {@code journal} commands. */
public final class JournalFileTarget implements Target {
    private static final Instant NOW = Instant.parse("2026-11-25T06:00:00Z");
    private final Path folder;
    private final byte[] good;

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

    public JournalFileTarget() throws Exception {
        folder = Fuzz.folder("journal");
        Path file = folder.resolve("good.db");
        try (Journal<String> journal = Journal.open(file, "north", "bay-3", new Plain(), NOW)) {
            journal.append(Collections.nCopies(20, Entry.<String>empty().with(NOW,
                    new Data.Clock(new Stamp("boot", 1, Stamp.Clock.SYNCHRONISED), NOW))));
        }
        good = Files.readAllBytes(file);
    }

    @Override
    public String name() {
        return "journal";
    }

    @Override
    public List<byte[]> seeds() {
        return List.of(good, new byte[0], "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII));
    }

    @Override
    public List<String> words() {
        return List.of("CREATE TABLE", "event", "sqlite_schema", "about", "\0\0\0\0", "\0\0\0\1", "ÿÿ", "payload", "sequence", "journal",
                "BLOB", "PRAGMA", "{\"specversion\":\"1.0\"", "0000000000000007");
    }

    @Override
    public int longest() {
        return 256 * 1024;
    }

    @Override
    public String take(byte[] input) throws IOException {
        clear();
        Path file = Files.write(folder.resolve("lane.db"), input);
        String check = run("check", file);
        String backup = run("backup", file, folder.resolve("copy.db"));
        String repair = run("repair", file);
        Path restored = folder.resolve("other.db");
        Files.write(folder.resolve("rubbish.db"), input);
        String restore = run("restore", folder.resolve("rubbish.db"), restored);
        assertThat(Files.exists(restored)).as("begun anew only with what could be read").isEqualTo(restore.startsWith("0"));
        return String.join("\n", check, backup, repair, restore);
    }

    private String run(String command, Path... files) {
        StringWriter said = new StringWriter();
        PrintWriter to = new PrintWriter(said, true);
        int status = new CommandLine(new JournalCommand()).setOut(to).setErr(to)
                .setExecutionExceptionHandler((failure, line, parsed) -> Cupbeam.explain(failure, line.getErr()))
                .execute(Stream.concat(Stream.of(command), Stream.of(files).map(Path::toString)).toArray(String[]::new));
        assertThat(said.toString()).as(command).isNotBlank().doesNotContain("a fault of its own").doesNotContain("\tat ");
        assertThat(status).isBetween(0, 2);
        return status + said.toString().strip();
    }

    private void clear() throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            for (Path each : all.filter(file -> Files.isRegularFile(file) && !file.endsWith("good.db")).toList()) {
                Files.delete(each);
            }
        }
    }
}

package org.cupbeam.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.cupbeam.rig.file.BadFileException;

/** A file in TOML, read from a disk as a command reads it. */
abstract class TomlTarget implements Target {
    private final Path file;

    TomlTarget() {
        try {
            file = Fuzz.folder("toml").resolve("file.toml");
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    abstract void read(Path file) throws BadFileException;

    /** Longer than any is read, now and then. */
    @Override
    public int longest() {
        return 32 * 1024 + 16;
    }

    /** In all, most of it let go at once: {@link BoundedHeapTest} shows that it fits in a lane's heap. */
    @Override
    public long mostBytes() {
        return 160L << 20;
    }

    @Override
    public String take(byte[] input) throws IOException {
        Files.write(file, input);
        try {
            read(file);
            return ACCEPTED;
        } catch (BadFileException bad) {
            assertThat(bad.problems()).isNotEmpty();
            String reason = bad.getMessage().replace(file.toString(), "file.toml");
            assertThat(List.of(reason.split("\n", -1))).as("each line says where and what")
                    .allMatch(line -> line.matches("file\\.toml(:[1-9]\\d*)?: .{8,}"));
            return reason;
        }
    }
}

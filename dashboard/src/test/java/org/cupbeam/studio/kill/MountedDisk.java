package org.cupbeam.studio.kill;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/**
 * A small disk of its own for a program's folder: of memory, to be filled up; or a file with an ext4 in it, which the kernel turns
 * read-only as it does with a card that fails. Mounting wants root; where it is not allowed the test is skipped, and says so.
 */
final class MountedDisk implements AutoCloseable {
    private static final int CHUNK = 64 * 1024;

    private final Path at;
    private final Path image;

    private MountedDisk(Path at, Path image) {
        this.at = at;
        this.image = image;
    }

    /** Of memory. */
    static MountedDisk ofMemory(Path at, int megabytes) throws IOException, InterruptedException {
        Files.createDirectories(at);
        orSkip("mount", "-t", "tmpfs", "-o", "size=" + megabytes + "m", "tmpfs", at.toString());
        return new MountedDisk(at, null);
    }

    /** An ext4 that goes read-only when something is wrong with it, as cards are mounted. */
    static MountedDisk ofFile(Path at, int megabytes) throws IOException, InterruptedException {
        Path image = at.resolveSibling(at.getFileName() + ".img");
        try (RandomAccessFile file = new RandomAccessFile(image.toFile(), "rw")) {
            file.setLength((long) megabytes << 20);
        }
        Files.createDirectories(at);
        orSkip("mkfs.ext4", "-q", "-F", image.toString());
        MountedDisk disk = new MountedDisk(at, image);
        orSkip(disk.mount());
        return disk;
    }

    private String[] mount() {
        return new String[] {"mount", "-o", "loop,errors=remount-ro", image.toString(), at.toString()};
    }

    /** To the last byte. */
    void fill() throws IOException {
        byte[] chunk = new byte[CHUNK];
        for (int length = CHUNK; length > 0; length /= 2) {
            try (OutputStream out = Files.newOutputStream(at.resolve("filler"), StandardOpenOption.CREATE, StandardOpenOption.APPEND)) {
                while (true) {
                    out.write(chunk, 0, length);
                }
            } catch (IOException full) {
                // with smaller pieces
            }
        }
    }

    void makeRoom() throws IOException {
        Files.delete(at.resolve("filler"));
    }

    /** By an error that the kernel is told to find in it; nothing can be written from now on, also to files that are open. */
    void turnReadOnly() throws IOException, InterruptedException {
        String device = output("findmnt", "-n", "-o", "SOURCE", at.toString()).strip();
        Path trigger = Path.of("/sys/fs/ext4", Path.of(device).getFileName().toString(), "trigger_fs_error");
        Assumptions.assumeTrue(Files.isWritable(trigger), "this kernel cannot be told to find an error in an ext4");
        Files.write(trigger, "1".getBytes(StandardCharsets.US_ASCII));
        assertThat(at.resolve("anything")).satisfies(file -> {
            try {
                Files.createFile(file);
                throw new AssertionError("it can still be written");
            } catch (IOException readOnly) {
                assertThat(readOnly).hasMessageContaining("ead-only");
            }
        });
    }

    /** As somebody does who takes the card out, has it checked, and puts it back. No program may be at it. */
    void mend() throws IOException, InterruptedException {
        assertThat(status("umount", at.toString())).isZero();
        assertThat(status("fsck.ext4", "-fy", image.toString())).as("0 or 1: errors corrected").isLessThan(2);
        assertThat(status(mount())).isZero();
    }

    @Override
    public void close() throws IOException, InterruptedException {
        status("umount", "-l", at.toString());
    }

    private static void orSkip(String... command) throws IOException, InterruptedException {
        try {
            int status = status(command);
            Assumptions.assumeTrue(status == 0, "not allowed here: " + String.join(" ", command) + " (status " + status + ")");
        } catch (IOException noSuchProgram) {
            Assumptions.abort(noSuchProgram.getMessage());
        }
    }

    private static int status(String... command) throws IOException, InterruptedException {
        Process process = started(command);
        process.getInputStream().readAllBytes();
        assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
        return process.exitValue();
    }

    private static String output(String... command) throws IOException {
        return new String(started(command).getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }

    private static Process started(String... command) throws IOException {
        return new ProcessBuilder(List.copyOf(Arrays.asList(command))).redirectErrorStream(true).start();
    }
}

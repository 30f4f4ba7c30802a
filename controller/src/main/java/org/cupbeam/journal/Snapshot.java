package org.cupbeam.journal;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * A copy of a journal that a lane may be writing to. The lane has its file for itself alone, so SQLite cannot be asked;
 * but it writes to its log only, except now and then when it moves the log into the file. A copy during which the file
 * stood still, and the log was not begun anew, is the journal as it was at one moment.
 */
final class Snapshot {
    private static final int TRIES = 100;
    private static final Duration STILL = Duration.ofMillis(50);
    private static final int LOG_HEAD = 32;

    private Snapshot() {
    }

    /**
     * Copies file and log into a folder.
     *
     * @return the copy
     * @throws IOException also where the file would not stand still
     */
    static Path of(Path file, Path folder) throws IOException {
        for (int i = 0; i < TRIES; i++) {
            State before = State.of(file);
            if (before.stands()) {
                Path copy = plain(file, folder);
                if (before.equals(State.of(file))) {
                    return copy;
                }
            }
            pause();
        }
        throw new IOException(file + ": is written to all the time, and cannot be copied; try again, or stop the lane");
    }

    /** The same, of a journal that nobody writes to. */
    static Path plain(Path file, Path folder) throws IOException {
        Path copy = folder.resolve("copy.db");
        for (String part : new String[] {"", "-wal"}) {
            Path from = file.resolveSibling(file.getFileName() + part);
            Path to = folder.resolve("copy.db" + part);
            Files.deleteIfExists(to);
            if (Files.exists(from)) {
                Files.copy(from, to);
            }
        }
        return copy;
    }

    static void delete(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            for (Path each : files.toList()) {
                Files.delete(each);
            }
        }
        Files.delete(folder);
    }

    private static void pause() throws IOException {
        try {
            TimeUnit.NANOSECONDS.sleep(STILL.toNanos() * 2);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted", e);
        }
    }

    /** By what a change of the file shows, or a log that was begun anew. */
    private record State(FileTime changed, long size, String log) {
        static State of(Path file) throws IOException {
            Path log = file.resolveSibling(file.getFileName() + "-wal");
            byte[] head = new byte[0];
            if (Files.exists(log)) {
                try (InputStream in = Files.newInputStream(log)) {
                    head = in.readNBytes(LOG_HEAD);
                }
            }
            return new State(Files.getLastModifiedTime(file), Files.size(file), Arrays.toString(head));
        }

        /** Whether the last change is so long ago that another would show in the time of it. */
        boolean stands() {
            return Duration.between(changed.toInstant(), Instant.now()).abs().compareTo(STILL) > 0;
        }
    }
}

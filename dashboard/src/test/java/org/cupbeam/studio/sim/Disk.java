package org.cupbeam.studio.sim;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/**
 * A machine's disk, as far as one database of SQLite's lies on it. The files are real, and SQLite's own; simulated is
 * what a power cut leaves of them.
 *
 * <p>What SQLite promises with {@code journal_mode=WAL, synchronous=FULL}, which both databases insist on: a commit
 * appends its pages to the write-ahead log and syncs that before it returns; a checkpoint then writes pages into the
 * database and syncs that before the log may be begun anew; and the header of a log begun anew is synced before any
 * page follows it. So between two steps of a program everything is synced, and a power cut there leaves the files as
 * they are. Within a step that commits, {@link #torn} keeps what was synced before, and of what was written since,
 * sector by sector (512 bytes), all, nothing, or rubbish. Assumed with SQLite ("powersafe overwrite", its default): a
 * write that is cut short harms no byte beside those it writes.
 */
class Disk {
    private static final int SECTOR = 512;
    private static final int LOG_HEADER = 32;

    /** What is in the files. */
    record Image(byte[] database, byte[] log) {
        boolean same(Image other) {
            return Arrays.equals(log, other.log) && Arrays.equals(database, other.database);
        }
    }

    private final Path database;
    private final Path log;

    Disk(Path database) {
        this.database = database;
        this.log = Path.of(database + "-wal");
    }

    Path database() {
        return database;
    }

    Image image() {
        try {
            return new Image(Files.readAllBytes(database), Files.exists(log) ? Files.readAllBytes(log) : new byte[0]);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What a power cut leaves between two steps. */
    Image synced() {
        return image();
    }

    /** Puts the files there as a crash left them. Nobody may have them open. */
    void restore(Image image) {
        try {
            Files.deleteIfExists(Path.of(database + "-shm"));
            Files.write(database, image.database());
            if (image.log().length == 0) {
                Files.deleteIfExists(log);
            } else {
                Files.write(log, image.log());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * What a power cut can leave of a commit under way, and of the checkpoint that may follow it.
     *
     * @param before all synced
     * @param after  what would have been there when the step returned
     */
    static Image torn(Image before, Image after, Dice dice) {
        if (dice.chance(0.3) && !Arrays.equals(before.database(), after.database())) {
            return new Image(mixed(before.database(), after.database(), 0, dice), after.log());
        }
        boolean begunAnew = before.log().length >= LOG_HEADER && after.log().length >= LOG_HEADER
                && !Arrays.equals(before.log(), 0, LOG_HEADER, after.log(), 0, LOG_HEADER);
        if (begunAnew && dice.chance(0.3)) {
            byte[] header = before.log().clone();
            System.arraycopy(after.log(), 0, header, 0, dice.between(0, LOG_HEADER));
            return new Image(before.database(), header);
        }
        return new Image(before.database(), mixed(before.log(), after.log(), begunAnew ? LOG_HEADER : 0, dice));
    }

    /** Of each sector that was written, what it held before, what it was to hold, or rubbish. */
    private static byte[] mixed(byte[] before, byte[] after, int synced, Dice dice) {
        double written = dice.one(List.of(0.0, 0.5, 0.9, 1.0));
        int length = before.length >= after.length || dice.chance(0.3) ? Math.max(before.length, after.length)
                : dice.between(before.length, after.length);
        byte[] mixed = Arrays.copyOf(before, length);
        byte[] rubbish = new byte[SECTOR];
        for (int from = 0; from < Math.min(length, after.length); from += SECTOR) {
            int to = Math.min(Math.min(from + SECTOR, length), after.length);
            boolean whole = dice.chance(written);
            boolean garbled = !whole && dice.chance(0.1);
            if (garbled) {
                dice.bytes(rubbish);
            }
            for (int i = from; i < to; i++) {
                boolean changed = i >= before.length || before[i] != after[i];
                if (i < synced || changed && whole) {
                    mixed[i] = after[i];
                } else if (changed && garbled) {
                    mixed[i] = rubbish[i - from];
                }
            }
        }
        return mixed;
    }
}

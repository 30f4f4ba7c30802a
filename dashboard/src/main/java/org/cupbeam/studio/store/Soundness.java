package org.cupbeam.studio.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.sqlite.JDBC;
import org.sqlite.SQLiteConfig;

/**
 * Whether a file of SQLite's is whole, as far as SQLite can tell: the header, every page's structure, the file's length.
 * SQLite keeps no checksums, so a letter that was flipped within a text is not seen.
 *
 * @param file which need not be there yet
 */
record Soundness(Path file) {
    private static final Logger LOG = LoggerFactory.getLogger(Soundness.class);
    private static final int BUSY_MS = 5_000;
    private static final long LONG_MS = 3_000;
    private static final int LONGEST_SHOWN = 160;

    /** @throws StoreTrouble where it is not */
    void check() {
        Path log = file.resolveSibling(file.getFileName() + "-wal");
        if (!Files.exists(file)) {
            if (Files.exists(log)) {
                throw damaged("is not there, but what was written to it last is, in " + log.getFileName());
            }
            LOG.info("store {} is not there yet, and begins empty", file);
            return;
        }
        if (length() == 0) {
            throw damaged("is empty, 0 bytes long, as no store is");
        }
        long beganMs = System.nanoTime() / 1_000_000;
        String said = quickCheck();
        if (!"ok".equals(said)) {
            throw damaged("is damaged (SQLite: " + said + ")");
        }
        long tookMs = System.nanoTime() / 1_000_000 - beganMs;
        if (tookMs > LONG_MS) {
            LOG.info("store {} was looked through for damage in {} ms", file, tookMs);
        }
    }

    private String quickCheck() {
        SQLiteConfig config = new SQLiteConfig();
        config.setBusyTimeout(BUSY_MS);
        try (Connection connection = JDBC.createConnection(JDBC.PREFIX + file, config.toProperties());
             Statement ask = connection.createStatement();
             ResultSet answer = ask.executeQuery("PRAGMA quick_check(1)")) {
            return answer.next() ? shortened(answer.getString(1)) : "no answer";
        } catch (SQLException e) {
            return shortened(e.getMessage());
        }
    }

    private long length() {
        try {
            return Files.size(file);
        } catch (IOException e) {
            throw damaged("cannot be read (" + e + ")");
        }
    }

    private StoreTrouble damaged(String how) {
        return new StoreTrouble("store " + file + " " + how + ". Nothing was begun in its place. First copy " + file.getFileName()
                + " and its -wal and -shm, if there, somewhere safe; then save what can be read with 'store repair', or "
                + "restore your latest copy of the store with 'store restore'. To begin with an empty store, move the "
                + "file and its -wal away: lanes send again what they still hold", null);
    }

    private static String shortened(String text) {
        String line = String.valueOf(text).replaceAll("\\s+", " ").strip();
        return line.length() <= LONGEST_SHOWN ? line : line.substring(0, LONGEST_SHOWN) + "\u2026";
    }
}

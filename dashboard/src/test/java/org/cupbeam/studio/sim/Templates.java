package org.cupbeam.studio.sim;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import org.cupbeam.event.Topics;
import org.cupbeam.journal.JournalException;
import org.cupbeam.lane.LaneByHand;
import org.cupbeam.lane.Surroundings;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Store;

/** Databases as the program's own migrations leave them, made once and copied; the journal's id is then the seed's. */
final class Templates {
    private static final byte[] STORE = make(file -> Store.open(Database.file(file)).close());
    private static final byte[] JOURNAL = make(file -> {
        try {
            new LaneByHand(new Topics("a", "b"), Green.RIG, file, Surroundings.ofThisMachine("made once"), null,
                    () -> { }).close();
        } catch (JournalException e) {
            throw new AssertionError(e);
        }
    });

    private interface Maker {
        void make(Path file);
    }

    private Templates() {
    }

    static Path store(Path file) {
        return write(file, STORE);
    }

    static Path journal(Path file, String id) {
        write(file, JOURNAL);
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
             Statement statement = connection.createStatement()) {
            statement.execute("UPDATE about SET journal = '" + id + "'");
            return file;
        } catch (SQLException e) {
            throw new AssertionError(e);
        }
    }

    private static Path write(Path file, byte[] content) {
        try {
            return Files.write(file, content);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static byte[] make(Maker maker) {
        try {
            Path folder = Files.createTempDirectory("sim-template");
            Path file = folder.resolve("template.db");
            maker.make(file);
            byte[] content = Files.readAllBytes(file);
            for (String each : folder.toFile().list()) {
                if (!folder.resolve(each).toFile().isDirectory()) {
                    Files.delete(folder.resolve(each));
                }
            }
            return content;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

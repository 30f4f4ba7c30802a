package org.cupbeam.studio.installed;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HashSet;
import java.util.Set;

/**
 * What the store in the machine holds.
 *
 * @param journals how many journals events came from
 * @param last     the highest sequence number
 * @param open     runs that have putts and no end yet
 */
record Kept(int journals, long events, long last, Set<String> open) {
    private static final ObjectMapper JSON = new ObjectMapper();

    static Kept in(Box box) {
        Path store = box.file("/var/lib/cupbeam/studio.db");
        if (!Files.exists(store)) {
            return new Kept(0, 0, 0, Set.of());
        }
        Set<String> journals = new HashSet<>();
        Set<String> open = new HashSet<>();
        Set<String> ended = new HashSet<>();
        long events = 0;
        long last = 0;
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + store);
             ResultSet rows = connection.createStatement().executeQuery("SELECT journal_id, sequence, envelope FROM event")) {
            while (rows.next()) {
                journals.add(rows.getString(1));
                last = Math.max(last, rows.getLong(2));
                events++;
                JsonNode event = JSON.readTree(rows.getString(3));
                String run = event.at("/data/run").asText();
                if (event.get("type").asText().equals("org.cupbeam.attempt.v1")) {
                    open.add(run);
                } else if (event.get("type").asText().equals("org.cupbeam.run.v1")) {
                    ended.add(run);
                }
            }
        } catch (SQLException busy) {
            return new Kept(0, 0, 0, Set.of());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        open.removeAll(ended);
        return new Kept(journals.size(), events, last, open);
    }
}

package org.cupbeam.studio.store;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import org.cupbeam.studio.ingest.Batch;
import org.jdbi.v3.core.Handle;

/** Keeps messages that made no sense: each different one once, the newest thousand. */
final class DeadLetters {
    private static final int MOST_KEPT = 1_000;
    private static final int LONGEST_KEPT = 4_096;

    private DeadLetters() {
    }

    static void keep(Handle h, Numbers numbers, Batch.DeadLetter letter) {
        byte[] payload = Arrays.copyOf(letter.payload(), Math.min(letter.payload().length, LONGEST_KEPT));
        String text = new String(payload, StandardCharsets.UTF_8).replace('\0', '\uFFFD');
        long atMs = letter.received().toEpochMilli();
        String digest = digest(letter.topic() + "\n" + letter.reason() + "\n" + text);
        int again = h.execute("UPDATE dead_letter SET times = times + 1, last_ms = ? WHERE digest = ?", atMs, digest);
        if (again == 0) {
            int id = numbers.next(h, "dead_letter");
            h.execute("INSERT INTO dead_letter (id, digest, topic, reason, payload, times, first_ms, last_ms) "
                    + "VALUES (?, ?, ?, ?, ?, 1, ?, ?)", id, digest, letter.topic(), letter.reason(), text, atMs, atMs);
            h.execute("DELETE FROM dead_letter WHERE id <= ?", id - MOST_KEPT);
        }
    }

    private static String digest(String text) {
        try {
            byte[] sha = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(sha, 0, 16);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}

package org.cupbeam.studio.store.upkeep;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileChannel.MapMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.cupbeam.studio.store.CheckSum;

/**
 * Looks for events byte by byte in a file, wherever they lie in it: each is a text of its own that tells where it belongs, and
 * its check sum is written right after it. What is not followed by its check sum is no event. One that SQLite has spread over
 * several pages, of some 4,000 bytes and more, is not found so.
 */
final class Carving {
    private static final byte[] BEGINNING = "{\"specversion\"".getBytes(StandardCharsets.US_ASCII);
    private static final int LONGEST = 1 << 16;
    private static final int SUM_BYTES = 8;
    /** Where an event was not understood, the reason stands between it and its check sum. */
    private static final int LONGEST_REASON = 2_000;
    private static final long WINDOW = 1L << 28;

    /** Is given each text that has its check sum. */
    interface Taker {
        void event(String text);
    }

    private final ByteBuffer bytes;
    private final Taker taker;

    private Carving(ByteBuffer bytes, Taker taker) {
        this.bytes = bytes;
        this.taker = taker;
    }

    static void of(Path file, Taker taker) throws IOException {
        try (FileChannel channel = FileChannel.open(file)) {
            for (long from = 0; from < channel.size(); from += WINDOW) {
                long length = Math.min(WINDOW + LONGEST, channel.size() - from);
                new Carving(channel.map(MapMode.READ_ONLY, from, length), taker).all();
            }
        }
    }

    private void all() {
        for (int at = 0; at <= bytes.limit() - BEGINNING.length; at++) {
            if (bytes.get(at) == '{' && begins(at)) {
                int end = end(at);
                if (end > 0) {
                    take(at, end);
                }
            }
        }
    }

    private boolean begins(int at) {
        for (int i = 1; i < BEGINNING.length; i++) {
            if (bytes.get(at + i) != BEGINNING[i]) {
                return false;
            }
        }
        return true;
    }

    /** Where the object ends that begins here; 0 where it does not. */
    private int end(int from) {
        int depth = 0;
        boolean quoted = false;
        for (int at = from; at < Math.min(bytes.limit(), from + LONGEST); at++) {
            byte is = bytes.get(at);
            if (quoted) {
                at += is == '\\' ? 1 : 0;
                quoted = is != '"';
            } else if (is == '"') {
                quoted = true;
            } else if (is == '{') {
                depth++;
            } else if (is == '}' && --depth == 0) {
                return at + 1;
            }
        }
        return 0;
    }

    private void take(int from, int end) {
        String text = text(from, end);
        String after = text(end, Math.min(bytes.limit(), end + LONGEST_REASON + SUM_BYTES));
        if (after.contains(CheckSum.of(text))) {
            taker.event(text);
        }
    }

    private String text(int from, int end) {
        byte[] text = new byte[end - from];
        bytes.get(from, text);
        return new String(text, StandardCharsets.UTF_8);
    }
}

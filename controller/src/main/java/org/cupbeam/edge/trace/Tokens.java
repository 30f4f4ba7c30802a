package org.cupbeam.edge.trace;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.function.LongConsumer;

/**
 * The words of a trace, one at a time, as ranges of one buffer. A word that the input has only half of is kept until
 * the rest is there, so a growing file can be followed.
 */
final class Tokens {
    /** What {@link #next} found. */
    enum Found { WORD, NOTHING_YET, END }

    private static final int WORD_MAX = 1 << 16;
    private static final int BUFFER = 1 << 18;

    /** The buffer; the current word is at {@code [from, to)}. Both change with each {@link #next}. */
    final byte[] bytes = new byte[BUFFER];
    int from;
    int to;

    private final String name;
    private final InputStream in;
    private final boolean growing;
    private int next;
    private int limit;
    private long line = 1;
    private long bytesRead;
    private boolean ended;
    private LongConsumer progress = bytesSoFar -> { };

    Tokens(InputStream in, String name, boolean growing) {
        this.in = in;
        this.name = name;
        this.growing = growing;
    }

    Found next() throws IOException {
        int at = next;
        while (true) {
            while (at < limit && isSpace(bytes[at])) {
                if (bytes[at++] == '\n') {
                    line++;
                }
            }
            int start = at;
            while (at < limit && !isSpace(bytes[at])) {
                at++;
            }
            if (at < limit) {
                return word(start, at);
            }
            next = start;
            if (!fill()) {
                return atInputEnd();
            }
            at = next;
        }
    }

    private Found word(int start, int end) throws TraceException {
        from = start;
        to = end;
        next = end;
        if (end - start > WORD_MAX) {
            throw tooLong();
        }
        return Found.WORD;
    }

    private TraceException tooLong() {
        return wrong("a word of more than " + WORD_MAX + " bytes; is it a Value Change Dump?");
    }

    private Found atInputEnd() throws TraceException {
        if (growing) {
            return Found.NOTHING_YET;
        }
        ended = true;
        return next == limit ? Found.END : word(next, limit);
    }

    /** Makes room behind the started word and reads on; false where the input has no more, for now or for good. */
    private boolean fill() throws IOException {
        System.arraycopy(bytes, next, bytes, 0, limit - next);
        limit -= next;
        next = 0;
        if (limit > WORD_MAX) {
            to = limit;
            from = 0;
            throw tooLong();
        }
        int count = in.read(bytes, limit, bytes.length - limit);
        if (count <= 0) {
            return false;
        }
        limit += count;
        bytesRead += count;
        progress.accept(bytesRead);
        return true;
    }

    void onProgress(LongConsumer listener) {
        progress = listener;
    }

    long line() {
        return line;
    }

    int length() {
        return to - from;
    }

    boolean is(String word) {
        if (to - from != word.length()) {
            return false;
        }
        for (int i = 0; i < word.length(); i++) {
            if (bytes[from + i] != word.charAt(i)) {
                return false;
            }
        }
        return true;
    }

    /** The word as text; of an overlong one only the first 256 bytes. */
    String text() {
        return new String(bytes, from, Math.min(to - from, 256), StandardCharsets.UTF_8);
    }

    /** Whether the word begins as ASCII text does. */
    boolean isText() {
        return bytes[from] > ' ' && bytes[from] < 127;
    }

    /** An error's reason for a word that does not. */
    String notText() {
        return String.format("byte 0x%02X is no text; is the trace compressed, or no Value Change Dump?",
                bytes[from] & 0xFF);
    }

    /** The word from {@code start} for an eye, cut short, and without anything a terminal would act on. */
    String shown(int start) {
        int end = Math.min(to, start + 40);
        StringBuilder text = new StringBuilder();
        for (int i = start; i < end; i++) {
            int each = bytes[i] & 0xFF;
            text.append(each > 32 && each < 127 ? String.valueOf((char) each) : String.format("\\x%02X", each));
        }
        return text.append(end < to ? "…" : "").toString();
    }

    /** An error at the current word. */
    TraceException wrong(String reason) {
        boolean torn = ended && to == limit && from < to;
        return new TraceException(name, line, reason + (torn
                ? "; the trace ends in this line without a line end: if its recording was cut off, remove the line" : ""));
    }

    private static boolean isSpace(byte each) {
        return each <= ' ' && (each == ' ' || each >= '\t' && each <= '\r');
    }
}

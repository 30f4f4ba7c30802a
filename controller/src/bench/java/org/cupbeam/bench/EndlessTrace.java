package org.cupbeam.bench;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.cupbeam.edge.trace.VcdReader;
import org.cupbeam.rig.Rig;

/**
 * A trace that never ends: the edges of a finite one over and over, later each time. Reading it allocates nothing, so
 * whatever is allocated is the reader's, or whoever's has the edges next.
 */
final class EndlessTrace extends InputStream {
    private static final int DIGITS = 19;
    /** Of a time the first digits, which say how often the trace has been read. */
    private static final int PASS_DIGITS = 5;
    private static final long PASS_NS = 100_000_000_000_000L;
    private static final int STAMP = 1 + DIGITS + 1;
    private static final int ENTRY = STAMP + 3;

    private final byte[] head;
    private final byte[] body;
    private byte[] current;
    private int at;
    private int pass;

    /** @throws IllegalArgumentException where the trace is longer than a day or so, or the rig has too many channels */
    EndlessTrace(Trace trace) throws IOException {
        head = head(trace.rig());
        body = body(trace);
        current = head;
    }

    private static byte[] head(Rig rig) {
        StringBuilder text = new StringBuilder("$timescale 1 ns $end\n");
        for (int i = 0; i < rig.channels().size(); i++) {
            text.append("$var wire 1 ").append((char) ('!' + i)).append(' ').append(rig.channels().get(i).name())
                    .append(" $end\n");
        }
        return text.append("$enddefinitions $end\n").toString().getBytes(StandardCharsets.US_ASCII);
    }

    private static byte[] body(Trace trace) throws IOException {
        byte[] body = new byte[1 << 12];
        int used = 0;
        try (VcdReader reader = new VcdReader(new ByteArrayInputStream(trace.vcd()), "a trace", trace.rig())) {
            while (reader.next() == VcdReader.Step.EDGE) {
                if (reader.timeNs() >= PASS_NS) {
                    throw new IllegalArgumentException("the trace is too long: " + reader.timeNs() + " ns");
                }
                body = used + ENTRY > body.length ? Arrays.copyOf(body, 2 * body.length) : body;
                body[used] = '#';
                number(reader.timeNs(), body, used + 1, DIGITS);
                body[used + STAMP - 1] = '\n';
                body[used + STAMP] = (byte) (reader.active() ? '1' : '0');
                body[used + STAMP + 1] = (byte) ('!' + reader.channel());
                body[used + STAMP + 2] = '\n';
                used += ENTRY;
            }
        }
        return Arrays.copyOf(body, used);
    }

    private static void number(long value, byte[] into, int from, int digits) {
        long rest = value;
        for (int i = from + digits - 1; i >= from; i--) {
            into[i] = (byte) ('0' + rest % 10);
            rest /= 10;
        }
    }

    @Override
    public int read(byte[] into, int from, int length) {
        if (at == current.length) {
            again();
        }
        int count = Math.min(length, current.length - at);
        System.arraycopy(current, at, into, from, count);
        at += count;
        return count;
    }

    private void again() {
        if (current == body) {
            pass++;
            for (int i = 0; i < body.length; i += ENTRY) {
                number(pass, body, i + 1, PASS_DIGITS);
            }
        }
        current = body;
        at = 0;
    }

    @Override
    public int read() {
        throw new UnsupportedOperationException("whoever reads a trace reads it by the buffer");
    }
}

package org.cupbeam.edge.trace;

import java.io.Closeable;
import java.io.Flushable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;

/**
 * Writes edges as a Value Change Dump in whole microseconds: PulseView spreads a trace out into one sample per unit, and
 * chokes on nanoseconds. Only whole lines reach the file, within {@value #FLUSH_NS} ns of the edges' own time, so
 * whatever ends the program, the file is a trace that lacks at most the last moments. While nothing happens the time is
 * still written, for whoever follows the file.
 *
 * <p>Not safe for several threads. After a failure to write it takes edges and drops them; {@link #flush} and
 * {@link #close} tell.
 */
public final class VcdWriter implements EdgeSink, Closeable, Flushable {
    /** How far the file may lag behind the edges, in their time. */
    public static final long FLUSH_NS = 400_000_000;
    private static final int UNIT_NS = 1000;
    /** An edge with its time, and more. */
    private static final int EDGE_BYTES_MAX = 32;
    private static final byte FIRST_CODE = '!';

    private final OutputStream out;
    private final long startNs;
    private final byte[] buffer = new byte[8192];
    private int used;
    private long last;
    private long flushedNs;
    private long settledNs;
    private IOException failure;

    /**
     * Writes the head of a trace at once.
     *
     * @param startNs the time, on the edges' clock, that becomes the trace's zero
     * @param date    the wall clock's, for human eyes
     */
    public VcdWriter(OutputStream out, Rig rig, long startNs, Instant date) throws IOException {
        this.out = out;
        this.startNs = startNs;
        settledNs = startNs;
        out.write(head(rig.channels(), date).getBytes(StandardCharsets.US_ASCII));
        out.flush();
    }

    /** Starts a new file; one that is already there is left alone, and is an error. */
    public static VcdWriter create(Path file, Rig rig, long startNs, Instant date) throws IOException {
        OutputStream out = Files.newOutputStream(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        return new VcdWriter(out, rig, startNs, date);
    }

    /** {@inheritDoc} A time before the last one written counts as that one. */
    @Override
    public void edge(int channel, boolean active, long timeNs) {
        makeRoom();
        time(timeNs);
        buffer[used++] = (byte) (active ? '1' : '0');
        buffer[used++] = (byte) (FIRST_CODE + channel);
        buffer[used++] = '\n';
        flushIfDue();
    }

    @Override
    public void settled(long timeNs) {
        settledNs = timeNs;
        if (timeNs - startNs - flushedNs >= FLUSH_NS) {
            makeRoom();
            time(timeNs);
            flushIfDue();
        }
    }

    /** Hands everything so far to the operating system. */
    @Override
    public void flush() throws IOException {
        send();
        if (failure != null) {
            throw new IOException("the trace could not be written: " + failure.getMessage(), failure);
        }
    }

    /** Ends the trace at the time last settled: sigrok shows an edge only if time goes on after it. */
    @Override
    public void close() throws IOException {
        try (out) {
            makeRoom();
            time(settledNs);
            flush();
        }
    }

    private void time(long timeNs) {
        long traced = (timeNs - startNs) / UNIT_NS;
        if (traced > last) {
            last = traced;
            buffer[used++] = '#';
            number(traced);
            buffer[used++] = '\n';
        }
    }

    private void number(long value) {
        int digits = 1;
        for (long rest = value / 10; rest > 0; rest /= 10) {
            digits++;
        }
        long rest = value;
        for (int at = used + digits - 1; at >= used; at--) {
            buffer[at] = (byte) ('0' + rest % 10);
            rest /= 10;
        }
        used += digits;
    }

    private void makeRoom() {
        if (buffer.length - used < EDGE_BYTES_MAX) {
            send();
        }
    }

    private void flushIfDue() {
        if (last * UNIT_NS - flushedNs >= FLUSH_NS) {
            send();
        }
    }

    private void send() {
        try {
            if (failure == null) {
                out.write(buffer, 0, used);
                out.flush();
            }
        } catch (IOException notWritten) {
            failure = notWritten;
        }
        used = 0;
        flushedNs = last * UNIT_NS;
    }

    private static String head(List<Channel> channels, Instant date) {
        StringBuilder head = new StringBuilder()
                .append("$date ").append(date.truncatedTo(ChronoUnit.SECONDS)).append(" $end\n")
                .append("$version Cupbeam $end\n$timescale 1 us $end\n$scope module lane $end\n");
        StringBuilder values = new StringBuilder("#0\n$dumpvars\n");
        for (int i = 0; i < channels.size(); i++) {
            char code = (char) (FIRST_CODE + i);
            head.append("$var wire 1 ").append(code).append(' ').append(channels.get(i).name()).append(" $end\n");
            values.append('0').append(code).append('\n');
        }
        return head.append("$upscope $end\n$enddefinitions $end\n").append(values).append("$end\n").toString();
    }
}

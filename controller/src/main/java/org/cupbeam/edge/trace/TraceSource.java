package org.cupbeam.edge.trace;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.edge.EdgeSource;
import org.cupbeam.rig.Rig;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A recorded trace that happens again, as fast as is wanted, to a lane that takes it for its sensors.
 *
 * <p>The lane's clock is the trace's. It never passes an edge that has not been handed on, so a machine that is slow to
 * hand one on makes the time wait, and the lane finds the same whatever the speed.
 */
public final class TraceSource implements EdgeSource {
    private static final Logger LOG = LoggerFactory.getLogger(TraceSource.class);
    private static final long CLOSE_WITHIN_MS = 2_000;

    private final VcdReader reader;
    private final Path trace;
    private final boolean[] active;
    private final long fromNs;
    private final double factor;
    private final LongSupplier nanoTime;
    private volatile boolean started;
    private long startedAtNs;
    private volatile long nextNs;
    private Thread thread;

    private TraceSource(VcdReader reader, Path trace, Rig rig, long fromNs, double factor, LongSupplier nanoTime) {
        this.reader = reader;
        this.trace = trace;
        this.fromNs = fromNs;
        this.factor = factor;
        this.nanoTime = nanoTime;
        active = new boolean[rig.channels().size()];
    }

    /**
     * Opens a trace, and passes over what comes before the place to begin at.
     *
     * @param fromNs   time in the trace to begin at
     * @param factor   how many times as fast as it was recorded
     * @param nanoTime the machine's monotonic clock, ns
     * @throws TraceException where it makes no sense up to there
     */
    public static TraceSource open(Path trace, Rig rig, long fromNs, double factor, LongSupplier nanoTime)
            throws IOException {
        VcdReader reader = VcdReader.open(trace, rig);
        try {
            TraceSource source = new TraceSource(reader, trace, rig, fromNs, factor, nanoTime);
            source.readOn();
            while (source.nextNs < fromNs) {
                source.active[reader.channel()] = reader.active();
                source.readOn();
            }
            return source;
        } catch (IOException | RuntimeException e) {
            reader.close();
            throw e;
        }
    }

    /** The clock of the edges: time in the trace, ns. */
    public long nowNs() {
        return Math.min(nextNs, started ? fromNs + Math.round((nanoTime.getAsLong() - startedAtNs) * factor) : fromNs);
    }

    @Override
    public synchronized void start(EdgeSink sink) {
        startedAtNs = nanoTime.getAsLong();
        started = true;
        for (int channel = 0; channel < active.length; channel++) {
            if (active[channel]) {
                sink.edge(channel, true, fromNs);
            }
        }
        thread = new Thread(() -> play(sink), "trace");
        thread.setDaemon(true);
        thread.start();
    }

    private void play(EdgeSink sink) {
        try (reader) {
            while (nextNs < Long.MAX_VALUE) {
                long waitNs = Math.round((nextNs - fromNs) / factor) - (nanoTime.getAsLong() - startedAtNs);
                if (waitNs > 0) {
                    TimeUnit.NANOSECONDS.sleep(waitNs);
                }
                sink.edge(reader.channel(), reader.active(), nextNs);
                readOn();
            }
            LOG.info("{} is at its end; nothing more will happen", trace);
        } catch (InterruptedException closed) {
            Thread.currentThread().interrupt();
        } catch (IOException broken) {
            LOG.error("the trace stops here: {}", broken.getMessage());
        }
    }

    /** To the next edge; at the end the clock is free to run on. */
    private void readOn() throws IOException {
        nextNs = reader.next() == VcdReader.Step.EDGE ? reader.timeNs() : Long.MAX_VALUE;
    }

    @Override
    public synchronized void close() {
        if (thread == null) {
            return;
        }
        thread.interrupt();
        try {
            thread.join(CLOSE_WITHIN_MS);
        } catch (InterruptedException hurried) {
            Thread.currentThread().interrupt();
        }
    }
}

package org.cupbeam.edge.board;

import com.pi4j.context.Context;
import com.pi4j.io.gpio.digital.DigitalInput;
import com.pi4j.io.gpio.digital.DigitalState;
import com.pi4j.io.gpio.digital.DigitalStateChangeListener;
import com.pi4j.io.gpio.digital.PullResistance;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.cupbeam.edge.ChannelHealth;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.edge.EdgeSource;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Edges from Pi4J's digital inputs, of whatever platform: its mock above all. Pi4J passes no time on, so an edge gets the
 * time at which its listener was called, which is good enough for a pedal, and too coarse for a ball: see
 * {@link BoardEdges}.
 */
public final class PinEdges implements EdgeSource {
    private static final long SETTLE_MS = 50;
    private static final long SHUTDOWN_MS = 1500;
    private static final Logger LOG = LoggerFactory.getLogger(PinEdges.class);

    private final Context pi4j;
    private final Rig rig;
    private final LongSupplier clock;
    private final List<DigitalInput> inputs = new ArrayList<>();
    private final List<DigitalStateChangeListener> listeners = new ArrayList<>();
    private final List<LineCounters> counters = new ArrayList<>();
    private final boolean[] active;
    private final ScheduledExecutorService settling = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread thread = new Thread(work, "edges");
        thread.setDaemon(true);
        return thread;
    });
    private EdgeSink sink;
    private boolean closed;
    private long lastNs = Long.MIN_VALUE;

    /**
     * Takes over the context, and shuts it down when closed.
     *
     * @param pi4j  with a provider of digital inputs, and no shutdown hook of its own
     * @param clock the system's monotonic clock, ns
     */
    public PinEdges(Context pi4j, Rig rig, LongSupplier clock) {
        this.pi4j = pi4j;
        this.rig = rig;
        this.clock = clock;
        active = new boolean[rig.channels().size()];
        rig.channels().forEach(channel -> {
            LineCounters counter = new LineCounters();
            counter.kernelTime(false);
            counters.add(counter);
        });
    }

    @Override
    public synchronized void start(EdgeSink edges) {
        if (sink != null) {
            throw new IllegalStateException("started before");
        }
        sink = edges;
        for (int i = 0; i < active.length; i++) {
            int index = i;
            DigitalInput input = input(rig.channels().get(i));
            DigitalStateChangeListener listener = event -> changed(index, event.state());
            inputs.add(input);
            listeners.add(listener);
            input.addListener(listener);
            changed(index, input.state());
        }
        settling.scheduleAtFixedRate(this::settle, SETTLE_MS, SETTLE_MS, TimeUnit.MILLISECONDS);
    }

    @Override
    public List<ChannelHealth> health() {
        List<ChannelHealth> health = new ArrayList<>();
        for (int i = 0; i < active.length; i++) {
            health.add(counters.get(i).health(rig.channels().get(i).name()));
        }
        return health;
    }

    @Override
    public void close() {
        synchronized (this) {
            if (closed) {
                return;
            }
            closed = true;
            for (int i = 0; i < inputs.size(); i++) {
                inputs.get(i).removeListener(listeners.get(i));
            }
        }
        settling.shutdownNow();
        shutDown();
    }

    private synchronized void changed(int channel, DigitalState state) {
        boolean now = state.isHigh() == (rig.channels().get(channel).active() == Channel.Level.HIGH);
        if (!closed && state != DigitalState.UNKNOWN && now != active[channel]) {
            active[channel] = now;
            long timeNs = now();
            counters.get(channel).edge(timeNs);
            sink.edge(channel, now, timeNs);
        }
    }

    private synchronized void settle() {
        if (!closed) {
            long timeNs = now();
            counters.forEach(each -> each.alive(timeNs));
            try {
                sink.settled(timeNs);
            } catch (RuntimeException failure) {
                LOG.error("Whoever takes the edges failed; going on", failure);
            }
        }
    }

    private long now() {
        lastNs = Math.max(lastNs, EdgeMerger.wholeUnits(clock.getAsLong()));
        return lastNs;
    }

    private DigitalInput input(Channel channel) {
        PullResistance pull = switch (channel.pull()) {
            case UP -> PullResistance.PULL_UP;
            case DOWN -> PullResistance.PULL_DOWN;
            case OFF -> PullResistance.OFF;
        };
        // Pi4J's own debounce is 10 ms, in which a fast ball comes and goes unseen.
        return pi4j.create(DigitalInput.newConfigBuilder(pi4j)
                .id(channel.name()).address(channel.gpio()).pull(pull).debounce(0L).build());
    }

    /** Pi4J waits for its threads, some of which may never end; nobody else needs to wait with it. */
    private void shutDown() {
        Thread shutdown = new Thread(pi4j::shutdown, "pi4j-shutdown");
        shutdown.setDaemon(true);
        shutdown.start();
        try {
            shutdown.join(SHUTDOWN_MS);
        } catch (InterruptedException hurry) {
            Thread.currentThread().interrupt();
        }
        if (shutdown.isAlive()) {
            LOG.warn("Pi4J does not shut down; it is left behind");
        }
    }
}

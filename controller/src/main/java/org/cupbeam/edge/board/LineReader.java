package org.cupbeam.edge.board;

import java.util.function.LongConsumer;
import java.util.function.LongSupplier;
import org.cupbeam.rig.Channel;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Takes one line's edges off the kernel, turn by turn, and does nothing else: the kernel keeps only sixteen for a line, and
 * drops the newest without a word. What proves such a loss is counted, and the channel's state set right by the level. A
 * line that fails is asked for again, less and less often.
 *
 * <p>One thread takes turns; the counters may be read from any, and another one may ask whether an edge is on its way.
 */
final class LineReader {
    static final long WAIT_NS = 50_000_000;
    static final long RETRY_MIN_NS = 100_000_000;
    static final long RETRY_MAX_NS = 10_000_000_000L;
    /** Kernel stamps so far before the opening or after now are of another clock, or cut short by a 32-bit system. */
    private static final long STAMP_ERROR_MAX_NS = 1_000_000_000;
    /** An edge may be on its way when the level is read; one that does not come within a wait is lost. */
    private static final int ODD_LEVELS_MAX = 2;
    private static final Logger LOG = LoggerFactory.getLogger(LineReader.class);

    private final Channel channel;
    private final LineOpener opener;
    private final EdgeRing ring;
    private final LongSupplier clock;
    private final LongConsumer pause;
    private final LineCounters counters = new LineCounters();

    /** Kept while the port is asked from another thread, or is given up. */
    private final Object portGuard = new Object();
    private LinePort port;
    /** Odd while what the kernel has is being taken off it and has not reached the ring yet. */
    private volatile long takings;
    private boolean opened;
    private boolean stampsJudged;
    private boolean active;
    private long levelFromNs;
    private long levelToNs;
    private long lastNs;
    private int oddLevels;
    private long retryNs = RETRY_MIN_NS;

    /**
     * @param clock the system's monotonic clock, ns
     * @param pause waits for so many ns, or less
     */
    LineReader(Channel channel, LineOpener opener, EdgeRing ring, LongSupplier clock, LongConsumer pause) {
        this.channel = channel;
        this.opener = opener;
        this.ring = ring;
        this.clock = clock;
        this.pause = pause;
    }

    Channel channel() {
        return channel;
    }

    EdgeRing ring() {
        return ring;
    }

    LineCounters counters() {
        return counters;
    }

    /** Opens the line, or waits a little for its next edge and takes it. Throws nothing. */
    void turn() {
        try {
            long nowNs = clock.getAsLong();
            counters.alive(nowNs);
            if (port == null || port.await(WAIT_NS)) {
                takings = takings + 1;
                try {
                    openOrTake();
                } finally {
                    takings = takings + 1;
                }
            } else {
                compareLevel(nowNs);
                counters.settled(nowNs);
            }
        } catch (Throwable failure) {
            fail(failure);
        }
    }

    /**
     * Whether no edge from before this call is still on its way to the ring, be it that the reader was held up. What the kernel has
     * stamped and not queued yet is not seen. For the thread that empties the ring.
     */
    boolean isQuiet() {
        long before = takings;
        return (before & 1) == 0 && !kernelHasEdge() && takings == before;
    }

    private boolean kernelHasEdge() {
        synchronized (portGuard) {
            try {
                return port != null && port.hasEdge();
            } catch (Throwable failure) {
                return true; // the reader will find out, and give the line back
            }
        }
    }

    void close() {
        LinePort closing;
        synchronized (portGuard) {
            closing = port;
            port = null;
        }
        if (closing != null) {
            try {
                closing.close();
            } catch (Throwable failure) {
                LOG.debug("{} (GPIO {}) could not be given back", channel.name(), channel.gpio(), failure);
            }
        }
    }

    private void openOrTake() {
        if (port == null) {
            open();
        } else {
            take();
        }
    }

    private void open() {
        LinePort opening = opener.open(channel);
        synchronized (portGuard) {
            port = opening;
        }
        levelFromNs = clock.getAsLong();
        boolean now = isActive(port.isHigh());
        levelToNs = clock.getAsLong();
        if (opened && now != active) {
            counters.lost();
        }
        if (!counters.fault().isEmpty()) {
            LOG.info("{} (GPIO {}) can be read again", channel.name(), channel.gpio());
        }
        opened = true;
        oddLevels = 0;
        stampsJudged = false;
        retryNs = RETRY_MIN_NS;
        counters.fault("");
        change(now, levelFromNs, levelFromNs);
        counters.settled(levelFromNs);
    }

    private void take() {
        port.read();
        long arrivalNs = clock.getAsLong();
        long stampNs = port.timeNs();
        judgeStamps(stampNs, arrivalNs);
        long timeNs = Math.max(lastNs, counters.kernelTime() ? stampNs : arrivalNs);
        boolean now = isActive(port.rising());
        oddLevels = 0;
        if (timeNs <= levelFromNs) {
            return; // the level, read later, has it in it
        }
        counters.lag(arrivalNs - timeNs);
        if (now != active) {
            change(now, timeNs, arrivalNs);
        } else if (timeNs > levelToNs) {
            counters.lost();
        }
        counters.settled(timeNs);
    }

    private void judgeStamps(long stampNs, long arrivalNs) {
        if (!stampsJudged) {
            stampsJudged = true;
            // An edge may have waited long for a reader that was held up, but not since before its line was opened.
            boolean credible = stampNs > levelFromNs - STAMP_ERROR_MAX_NS && stampNs < arrivalNs + STAMP_ERROR_MAX_NS;
            if (!credible) {
                LOG.warn("{} (GPIO {}): the kernel's time stamps are off by {} s, so edges get the time of their reading;"
                        + " a 64-bit system has right ones", channel.name(), channel.gpio(), (arrivalNs - stampNs) / 1e9);
            }
            counters.kernelTime(credible);
        }
    }

    /** With no edge in sight, the level must be what the last edge made it. */
    private void compareLevel(long nowNs) {
        boolean now = isActive(port.isHigh());
        oddLevels = now == active ? 0 : oddLevels + 1;
        if (oddLevels >= ODD_LEVELS_MAX) {
            oddLevels = 0;
            counters.lost();
            change(now, nowNs, nowNs);
        }
    }

    private void change(boolean now, long timeNs, long arrivalNs) {
        if (now == active) {
            return;
        }
        active = now;
        lastNs = Math.max(lastNs, timeNs);
        if (ring.offer(now, lastNs, arrivalNs)) {
            counters.edge(lastNs);
        } else {
            counters.dropped();
        }
    }

    private void fail(Throwable failure) {
        close();
        if (counters.fault().isEmpty()) {
            LOG.warn("{} (GPIO {}) cannot be read: {}; trying again", channel.name(), channel.gpio(), failure.toString());
        }
        counters.fault(failure.toString());
        pause.accept(retryNs);
        retryNs = Math.min(2 * retryNs, RETRY_MAX_NS);
    }

    private boolean isActive(boolean high) {
        return high == (channel.active() == Channel.Level.HIGH);
    }
}

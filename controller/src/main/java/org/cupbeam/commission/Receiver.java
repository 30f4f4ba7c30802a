package org.cupbeam.commission;

import java.util.function.Consumer;

/** One beam's edges as crossings: what turns to and fro within 2 ms turned once, in the middle; what came to nothing never did. */
final class Receiver {
    static final long BURST_NS = 2_000_000;
    private static final long SHORTEST_NS = 10_000_000;
    private static final long LONGEST_NS = 2_000_000_000;

    /** When it was blocked, and cleared. */
    record Blocked(long onNs, long offNs) {
    }

    private final Consumer<Blocked> sink;
    private boolean told;
    private boolean level;
    private boolean turning;
    private long firstNs;
    private long lastNs;
    private long onNs;

    Receiver(boolean blocked, Consumer<Blocked> sink) {
        this.sink = sink;
        told = blocked;
        level = blocked;
        onNs = Long.MIN_VALUE / 2;
    }

    void edge(boolean blocked, long timeNs) {
        settle(timeNs);
        if (!turning) {
            turning = true;
            firstNs = timeNs;
        }
        lastNs = timeNs;
        level = blocked;
    }

    /** No edge before this time comes any more. */
    void settle(long timeNs) {
        if (!turning || timeNs - lastNs < BURST_NS) {
            return;
        }
        turning = false;
        if (level == told) {
            return;
        }
        told = level;
        long middleNs = firstNs + (lastNs - firstNs) / 2;
        if (told) {
            onNs = middleNs;
        } else if (middleNs - onNs >= SHORTEST_NS && middleNs - onNs <= LONGEST_NS) {
            sink.accept(new Blocked(onNs, middleNs));
        }
    }
}

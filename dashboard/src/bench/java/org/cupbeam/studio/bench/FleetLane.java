package org.cupbeam.studio.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.cupbeam.event.Topics;

/** A made-up lane that, as a true one, keeps what the host has not said that it stored, and sends it again. In memory. */
final class FleetLane {
    private static final long STILL_NS = TimeUnit.SECONDS.toNanos(10);

    final Topics topics;
    final Arrivals arrivals = new Arrivals();
    private final SyntheticLane script;
    private final NavigableMap<Long, SyntheticLane.Said> outbox = new TreeMap<>();
    private long movedNs = System.nanoTime();

    FleetLane(int number, Random random) {
        script = new SyntheticLane(number, random);
        topics = script.topics;
    }

    /** The next putt. @param timed whether its way to the board is measured */
    synchronized List<SyntheticLane.Said> putt(boolean timed) {
        List<SyntheticLane.Said> putt = script.putt();
        long nowNs = System.nanoTime();
        movedNs = outbox.isEmpty() ? nowNs : movedNs;
        putt.forEach(each -> {
            outbox.put(each.sequence(), each);
            if (timed) {
                arrivals.published(each.sequence(), nowNs);
            }
        });
        return putt;
    }

    /** The host's word. */
    synchronized void stored(long upTo) {
        if (!outbox.headMap(upTo, true).isEmpty()) {
            outbox.headMap(upTo, true).clear();
            movedNs = System.nanoTime();
        }
    }

    /** All that is not stored. */
    synchronized List<SyntheticLane.Said> pending() {
        movedNs = System.nanoTime();
        return new ArrayList<>(outbox.values());
    }

    /** What is not stored, once nothing of it has been for so long that it is to be sent again. */
    synchronized List<SyntheticLane.Said> overdue() {
        return outbox.isEmpty() || System.nanoTime() - movedNs < STILL_NS ? List.of() : pending();
    }

    synchronized long sequence() {
        return script.sequence();
    }

    synchronized int unstored() {
        return outbox.size();
    }
}

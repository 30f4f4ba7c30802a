package org.cupbeam.studio.ingest;

import java.util.Map;
import java.util.TreeMap;
import java.util.function.LongConsumer;
import java.util.function.ToLongFunction;

/**
 * One journal's items that came before others that they follow, in order, and how large they are together.
 *
 * @param <T> what is held
 */
final class Early<T> {
    private final TreeMap<Long, T> bySequence = new TreeMap<>();
    private final ToLongFunction<T> size;
    private final LongConsumer changed;
    private long bytes;

    /**
     * @param size    of one
     * @param changed is told by how much their size together has changed
     */
    Early(ToLongFunction<T> size, LongConsumer changed) {
        this.size = size;
        this.changed = changed;
    }

    boolean isEmpty() {
        return bySequence.isEmpty();
    }

    int count() {
        return bySequence.size();
    }

    long bytes() {
        return bytes;
    }

    /** The nearest one's number; only where there is one. */
    long first() {
        return bySequence.firstKey();
    }

    /** Takes one in, but for one that is there already. */
    void put(long sequence, T item) {
        if (bySequence.putIfAbsent(sequence, item) == null) {
            add(size.applyAsLong(item));
        }
    }

    /** Gives the nearest out; only where there is one. */
    T takeFirst() {
        return gone(bySequence.pollFirstEntry());
    }

    /** Lets the furthest go, if there is one. */
    void dropLast() {
        if (!isEmpty()) {
            gone(bySequence.pollLastEntry());
        }
    }

    /** Lets all go whose numbers are below this one. */
    void dropBelow(long sequence) {
        while (!isEmpty() && first() < sequence) {
            takeFirst();
        }
    }

    private T gone(Map.Entry<Long, T> entry) {
        add(-size.applyAsLong(entry.getValue()));
        return entry.getValue();
    }

    private void add(long change) {
        bytes += change;
        changed.accept(change);
    }
}

package org.cupbeam.studio.ingest;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.ToIntFunction;

/**
 * A bounded mailbox that keeps the latest letter per subject: whoever reads slowly sees fewer letters, never old ones.
 *
 * @param <T> a letter
 */
final class Latest<T> {
    private final int most;
    private final long mostBytes;
    private final ToIntFunction<T> size;
    private long bytes;
    private final Map<String, T> bySubject = new LinkedHashMap<>();

    /** Of letters whose size does not matter. */
    Latest(int most) {
        this(most, Long.MAX_VALUE, letter -> 0);
    }

    /**
     * @param mostBytes of all that is unread together
     * @param size      of a letter, bytes
     */
    Latest(int most, long mostBytes, ToIntFunction<T> size) {
        this.most = most;
        this.mostBytes = mostBytes;
        this.size = size;
    }

    /** Puts a letter in, in place of an unread one of the same subject. @return false when there is no room */
    synchronized boolean put(String subject, T letter) {
        T before = bySubject.get(subject);
        long then = bytes + size.applyAsInt(letter) - (before == null ? 0 : size.applyAsInt(before));
        if (before == null && bySubject.size() >= most || then > mostBytes) {
            return false;
        }
        bySubject.put(subject, letter);
        bytes = then;
        notifyAll();
        return true;
    }

    synchronized boolean isEmpty() {
        return bySubject.isEmpty();
    }

    /** Puts a letter back that could not be dealt with, unless a later one has come. */
    synchronized void putBack(String subject, T letter) {
        if (bySubject.putIfAbsent(subject, letter) == null) {
            bytes += size.applyAsInt(letter);
        }
    }

    /** The letter whose subject has waited longest, or null after {@code waitMs} without any. */
    synchronized Map.Entry<String, T> take(long waitMs) throws InterruptedException {
        long untilNs = System.nanoTime() + waitMs * 1_000_000;
        while (bySubject.isEmpty()) {
            long leftMs = (untilNs - System.nanoTime()) / 1_000_000;
            if (leftMs <= 0) {
                return null;
            }
            wait(leftMs);
        }
        return takeEldest();
    }

    private Map.Entry<String, T> takeEldest() {
        Iterator<Map.Entry<String, T>> all = bySubject.entrySet().iterator();
        Map.Entry<String, T> eldest = all.next();
        Map.Entry<String, T> copy = Map.entry(eldest.getKey(), eldest.getValue());
        all.remove();
        bytes -= size.applyAsInt(eldest.getValue());
        return copy;
    }
}

package org.cupbeam.studio.ingest;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A bounded mailbox that keeps the latest letter per subject: whoever reads slowly sees fewer letters, never old ones.
 *
 * @param <T> a letter
 */
final class Latest<T> {
    private final int most;
    private final Map<String, T> bySubject = new LinkedHashMap<>();

    Latest(int most) {
        this.most = most;
    }

    /** Puts a letter in, in place of an unread one of the same subject. @return false when there is no room */
    synchronized boolean put(String subject, T letter) {
        if (bySubject.size() >= most && !bySubject.containsKey(subject)) {
            return false;
        }
        bySubject.put(subject, letter);
        notifyAll();
        return true;
    }

    synchronized boolean isEmpty() {
        return bySubject.isEmpty();
    }

    /** Puts a letter back that could not be dealt with, unless a later one has come. */
    synchronized void putBack(String subject, T letter) {
        bySubject.putIfAbsent(subject, letter);
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
        return copy;
    }
}

package org.cupbeam.lane;

import java.util.Deque;
import java.util.concurrent.ConcurrentLinkedDeque;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.LongSupplier;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Score;
import org.cupbeam.journal.Entry;
import org.cupbeam.journal.Journal;
import org.cupbeam.journal.JournalException;
import org.cupbeam.journal.JournalWriter;

/**
 * Takes down what happens, and lets it be known only when it is on the disk: first the events, then the score that
 * includes them, then the answer to whoever asked. While the disk fails, so much waits and no more.
 */
final class Scribe implements AutoCloseable {
    /** While more than this waits, the newest score is kept and older ones are not: they are large, and of no use. */
    private static final int SCORES = 64;

    private static final class Pending {
        private final Entry<Told> entry;
        private final Answer answer;
        private volatile Score score;

        private Pending(Entry<Told> entry, Score score, Answer answer) {
            this.entry = entry;
            this.score = score;
            this.answer = answer;
        }
    }

    private final JournalWriter<Told> writer;
    private final Outlet outlet;
    private final Deque<Pending> pending = new ConcurrentLinkedDeque<>();
    private final AtomicInteger waiting = new AtomicInteger();
    private Pending newest;
    private long next;

    Scribe(Journal<Told> journal, LongSupplier clockNs, Outlet outlet) {
        this.outlet = outlet;
        writer = new JournalWriter<>(journal, clockNs, this::written);
        next = journal.last() + 1;
    }

    /** The sequence of the next event. */
    long next() {
        return next;
    }

    /**
     * Takes an entry down, in its turn. The lane's thread.
     *
     * @param score  the state of play with it; null where it changes nothing
     * @param answer to a command; null where nobody asked
     * @return false, and nothing taken, where too much waits for the disk already
     */
    boolean take(Entry<Told> entry, Score score, Answer answer) {
        Pending one = new Pending(entry, score, answer);
        pending.addLast(one);
        if (!writer.offer(entry)) {
            pending.removeLast();
            return false;
        }
        next += entry.events().size();
        if (waiting.incrementAndGet() > SCORES && score != null && newest != null) {
            newest.score = null;
        }
        newest = score == null ? newest : one;
        return true;
    }

    /** On the writer's thread. An entry that was dropped, since it made no sense, is passed over. */
    private void written(Entry<Told> entry, long lastSequence) {
        Pending one = next(entry);
        outlet.written();
        Score score = one.score;
        if (score != null) {
            outlet.score(score);
        }
        if (one.answer != null) {
            outlet.answer(one.answer);
        }
    }

    private Pending next(Entry<Told> entry) {
        Pending one;
        do {
            one = pending.removeFirst();
            waiting.decrementAndGet();
        } while (one.entry != entry);
        return one;
    }

    /** Why nothing can be written now; null while all is well. */
    JournalException fault() {
        return writer.fault();
    }

    /** Entries that made no sense; none, unless the program has a fault. */
    long dropped() {
        return writer.dropped();
    }

    /** One step by hand. */
    int doWork() {
        return writer.doWork();
    }

    void start() {
        writer.start();
    }

    @Override
    public void close() {
        writer.close();
    }
}

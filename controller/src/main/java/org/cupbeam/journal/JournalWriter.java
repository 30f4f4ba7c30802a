package org.cupbeam.journal;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Takes entries from a thread that must not wait for a disk, and writes them in order on its own. A disk that fails is
 * tried again every second with the same entries, so that nothing is lost while memory lasts.
 *
 * @param <I> the play's inputs
 */
public final class JournalWriter<I> implements AutoCloseable {
    /** The most entries that wait. */
    public static final int QUEUE = 1024;
    private static final Logger LOG = LoggerFactory.getLogger(JournalWriter.class);
    private static final int AT_ONCE = 64;
    private static final long RETRY_NS = TimeUnit.SECONDS.toNanos(1);
    private static final long QUIET_NS = TimeUnit.SECONDS.toNanos(2);
    /** The first entry after a tidying waits for the disk twice, so that one in a few hundred may. */
    private static final int TIDY_WORTH_IT = 250;
    private static final int TIDY_AFTER = 1000;

    private final Journal<I> journal;
    private final LongSupplier clockNs;
    private final Written<I> written;
    private final ArrayBlockingQueue<Entry<I>> queue = new ArrayBlockingQueue<>(QUEUE);
    private final List<Entry<I>> batch = new ArrayList<>(AT_ONCE);
    private volatile JournalException fault;
    private volatile Worker worker;
    private volatile long dropped;
    private long notBeforeNs;
    private long lastWriteNs;
    private int sinceTidy;

    /** Told, on the writer's thread, of each entry that is on the disk. */
    @FunctionalInterface
    public interface Written<I> {
        /** @param lastSequence of the last event on the disk with this entry, its own or an earlier one's */
        void written(Entry<I> entry, long lastSequence);
    }

    /** @param clockNs a monotonic clock, ns */
    public JournalWriter(Journal<I> journal, LongSupplier clockNs, Written<I> written) {
        this.journal = journal;
        this.clockNs = clockNs;
        this.written = written;
        this.lastWriteNs = clockNs.getAsLong();
    }

    /** Hands an entry over; false, and not taken, when {@link #QUEUE} wait already. Never waits. */
    public boolean offer(Entry<I> entry) {
        boolean taken = queue.offer(entry);
        Worker running = worker;
        if (running != null) {
            running.wake();
        }
        return taken;
    }

    /** Why nothing can be written now, for health; null while all is well. */
    public JournalException fault() {
        return fault;
    }

    /** How many entries were dropped because the program made them wrong: none, unless it has a fault. */
    public long dropped() {
        return dropped;
    }

    /** One step: writes what waits, or tidies up in a quiet moment. */
    public int doWork() {
        long now = clockNs.getAsLong();
        if (fault != null && now - notBeforeNs < 0) {
            return 0;
        }
        if (batch.isEmpty()) {
            queue.drainTo(batch, AT_ONCE);
        }
        boolean quiet = now - lastWriteNs >= QUIET_NS;
        try {
            if (!batch.isEmpty()) {
                write(now);
                return 1;
            }
            if (sinceTidy >= (quiet ? TIDY_WORTH_IT : TIDY_AFTER)) {
                sinceTidy = 0;
                journal.tidy();
            }
            fault = null;
            return 0;
        } catch (JournalException e) {
            failed(e, now);
            return 0;
        }
    }

    private void write(long now) throws JournalException {
        try {
            write(batch.size(), now);
        } catch (RuntimeException e) {
            writeFirstOrDrop(now);
        }
    }

    /** An entry that cannot even be put into words would hold up all behind it for ever. */
    private void writeFirstOrDrop(long now) throws JournalException {
        try {
            write(1, now);
        } catch (RuntimeException e) {
            LOG.error("an entry makes no sense, and is dropped: {}", batch.get(0), e);
            batch.remove(0);
            dropped++;
        }
    }

    private void write(int count, long now) throws JournalException {
        long sequence = journal.last();
        List<Entry<I>> done = List.copyOf(batch.subList(0, count));
        journal.append(done);
        batch.subList(0, count).clear();
        fault = null;
        lastWriteNs = now;
        sinceTidy += count;
        for (Entry<I> entry : done) {
            sequence += entry.events().size();
            written.written(entry, sequence);
        }
    }

    private void failed(JournalException e, long now) {
        if (fault == null || fault.kind() != e.kind()) {
            LOG.error("{}; {} entries wait, and it is tried again every second", e.getMessage(),
                    batch.size() + queue.size());
        }
        fault = e;
        notBeforeNs = now + RETRY_NS;
    }

    /** Takes its steps on a thread of its own from now on. */
    public void start() {
        worker = Worker.start("journal", this::doWork, TimeUnit.MILLISECONDS.toNanos(500));
    }

    /** Writes what still waits, and ends the thread; the journal itself stays open. */
    @Override
    public void close() {
        if (worker != null) {
            worker.close();
        }
        for (int i = 0; i <= QUEUE / AT_ONCE && fault == null && !(queue.isEmpty() && batch.isEmpty()); i++) {
            doWork();
        }
        int left = batch.size() + queue.size();
        if (left > 0) {
            LOG.error("{} entries could not be written: {}", left, fault == null ? "too many" : fault.getMessage());
        }
    }
}

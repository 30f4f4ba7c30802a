package org.cupbeam.studio.ingest;

import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Gets batches into the log: each as a whole, or else one event after the other, or later. What the log itself says is its own
 * trouble is waited out; an event is never blamed for it.
 */
final class Keeping {
    private static final Logger LOG = LoggerFactory.getLogger(Keeping.class);
    private static final long RETRY_MS = 1_000;
    private static final long SAY_AGAIN_NS = 60_000_000_000L;

    private final CountDownLatch closing;
    private final LongSupplier nanoTime;
    private volatile String trouble;
    private long saidNs;
    private long sinceNs;

    /** @param closing is zero once nothing is to be waited for any more */
    Keeping(CountDownLatch closing, LongSupplier nanoTime) {
        this.closing = closing;
        this.nanoTime = nanoTime;
    }

    /** Why nothing can be kept at present, in words; null while all is well. From any thread. */
    String trouble() {
        return trouble;
    }

    /**
     * Returns when all of it is kept.
     *
     * @throws NotOurTurn           where another host keeps events by now
     * @throws InterruptedException where it is closed before the store could keep it
     */
    void keep(EventLog log, Batch batch) throws InterruptedException {
        try {
            while (!tryToKeep(log, batch)) {
                // Nothing is let go: the lanes' own journals hold what cannot be taken in meanwhile.
                if (closing.await(RETRY_MS, TimeUnit.MILLISECONDS)) {
                    throw new InterruptedException("closed while the store could not keep anything");
                }
            }
        } catch (NotOurTurn e) {
            trouble = null; // another's now
            throw e;
        }
        if (trouble != null) {
            LOG.info("the store keeps events again, after {} s", TimeUnit.NANOSECONDS.toSeconds(nanoTime.getAsLong() - sinceNs));
            trouble = null;
        }
    }

    private boolean tryToKeep(EventLog log, Batch batch) {
        try {
            log.commit(batch);
            return true;
        } catch (NotOurTurn e) {
            throw e;
        } catch (NotNow e) {
            return notNow(e);
        } catch (RuntimeException e) {
            LOG.warn("a batch of {} events was not kept ({}); one by one", batch.arrivals().size(), e.toString());
            return oneByOne(log, batch);
        }
    }

    /** So that one event that cannot be kept as it is does not hold up the others. */
    private boolean oneByOne(EventLog log, Batch batch) {
        try {
            log.commit(new Batch(List.of(), List.of(), batch.deadLetters()));
            log.commit(new Batch(List.of(), batch.missing(), List.of()));
            for (Arrival each : batch.arrivals()) {
                one(log, each);
            }
            return true;
        } catch (NotOurTurn e) {
            throw e;
        } catch (RuntimeException e) {
            return notNow(e);
        }
    }

    /** An event is taken to be at fault only where it fails twice, and for no reason of the log's own. */
    private void one(EventLog log, Arrival arrival) {
        if (failure(log, arrival) == null) {
            return;
        }
        RuntimeException why = failure(log, arrival);
        if (why != null) {
            log.commit(new Batch(List.of(arrival.onlyKept(why.toString())), List.of(), List.of()));
            LOG.error("{} event {} kept, but not understood", arrival.source(), arrival.sequence(), why);
        }
    }

    /** Why an event by itself is not kept; null where it is. */
    private static RuntimeException failure(EventLog log, Arrival arrival) {
        try {
            log.commit(new Batch(List.of(arrival), List.of(), List.of()));
            return null;
        } catch (NotOurTurn | NotNow e) {
            throw e;
        } catch (RuntimeException e) {
            return e;
        }
    }

    /** Says so when it begins, when it is something else, and once a minute: this may go on all night. */
    private boolean notNow(RuntimeException e) {
        String words = e instanceof NotNow ? e.getMessage() : e.toString();
        long nowNs = nanoTime.getAsLong();
        if (trouble == null) {
            sinceNs = nowNs;
        }
        if (!words.equals(trouble) || nowNs - saidNs >= SAY_AGAIN_NS) {
            LOG.error("the store keeps nothing at present ({}); lanes keep what they have, and it is tried again every second", words);
            saidNs = nowNs;
        }
        trouble = words;
        return false;
    }
}

package org.cupbeam.studio.ingest;

import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Gets batches into the log: each as a whole, or else one event after the other, or later. */
final class Keeping {
    private static final Logger LOG = LoggerFactory.getLogger(Keeping.class);
    private static final long RETRY_MS = 1_000;

    private final CountDownLatch closing;

    /** @param closing is zero once nothing is to be waited for any more */
    Keeping(CountDownLatch closing) {
        this.closing = closing;
    }

    /**
     * Returns when all of it is kept.
     *
     * @throws NotOurTurn           where another host keeps events by now
     * @throws InterruptedException where it is closed before the store could keep it
     */
    void keep(EventLog log, Batch batch) throws InterruptedException {
        while (!tryToKeep(log, batch)) {
            // Nothing is let go: the lanes' own journals hold what cannot be taken in meanwhile.
            if (closing.await(RETRY_MS, TimeUnit.MILLISECONDS)) {
                throw new InterruptedException("closed while the store could not keep anything");
            }
        }
    }

    private boolean tryToKeep(EventLog log, Batch batch) {
        try {
            log.commit(batch);
            return true;
        } catch (NotOurTurn e) {
            throw e;
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
            LOG.error("the store keeps nothing at present ({}); trying again", e.toString());
            return false;
        }
    }

    private void one(EventLog log, Arrival arrival) {
        try {
            log.commit(new Batch(List.of(arrival), List.of(), List.of()));
        } catch (NotOurTurn e) {
            throw e;
        } catch (RuntimeException e) {
            log.commit(new Batch(List.of(arrival.onlyKept(e.toString())), List.of(), List.of()));
            LOG.error("{} event {} kept, but not understood", arrival.source(), arrival.sequence(), e);
        }
    }
}

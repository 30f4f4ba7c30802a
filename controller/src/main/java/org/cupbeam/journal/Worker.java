package org.cupbeam.journal;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.IntSupplier;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A thread that takes one step after another, and sleeps while a step finds nothing to do. The same steps can be taken
 * by hand, which is how tests take them.
 */
public final class Worker implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Worker.class);
    private static final long AFTER_FAILURE_NS = TimeUnit.SECONDS.toNanos(1);

    private final IntSupplier step;
    private final LongSupplier sleepNs;
    private final Thread thread;
    private volatile boolean stopped;

    private Worker(String name, IntSupplier step, LongSupplier sleepNs) {
        this.step = step;
        this.sleepNs = sleepNs;
        this.thread = new Thread(this::run, name);
        this.thread.setDaemon(true);
    }

    /**
     * Starts one.
     *
     * @param step    returns how much it did
     * @param sleepNs how long it sleeps at most when that was nothing, ns
     */
    public static Worker start(String name, IntSupplier step, long sleepNs) {
        return start(name, step, () -> sleepNs);
    }

    /**
     * Starts one.
     *
     * @param sleepNs asked after a step that did nothing
     */
    public static Worker start(String name, IntSupplier step, LongSupplier sleepNs) {
        Worker worker = new Worker(name, step, sleepNs);
        worker.thread.start();
        return worker;
    }

    /** There is something to do. From any thread; never waits; never lost. */
    public void wake() {
        LockSupport.unpark(thread);
    }

    private void run() {
        while (!stopped) {
            try {
                if (step.getAsInt() == 0 && !stopped) {
                    LockSupport.parkNanos(this, sleepNs.getAsLong());
                }
            } catch (RuntimeException | Error e) {
                LOG.error("{}: a step failed; the next is in a second", thread.getName(), e);
                LockSupport.parkNanos(this, AFTER_FAILURE_NS);
            }
        }
    }

    /** Takes no step after the one under way, and waits for that for 5 s at most. */
    @Override
    public void close() {
        stopped = true;
        wake();
        try {
            thread.join(TimeUnit.SECONDS.toMillis(5));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        if (thread.isAlive()) {
            LOG.warn("{}: still busy after 5 s; left to itself", thread.getName());
        }
    }
}

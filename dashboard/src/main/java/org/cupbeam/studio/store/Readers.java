package org.cupbeam.studio.store;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** A few reading connections, handed round. One that failed is not handed on. */
final class Readers implements AutoCloseable {
    private static final int WAIT_S = 10;

    private final Jdbi jdbi;
    private final Semaphore free;
    private final Deque<Handle> idle = new ArrayDeque<>();
    private boolean closed;

    Readers(Jdbi jdbi, int most) {
        this.jdbi = jdbi;
        this.free = new Semaphore(most);
    }

    <T> T with(Function<Handle, T> question) {
        acquire();
        try {
            Handle handle = take();
            T answer;
            try {
                answer = question.apply(handle);
            } catch (RuntimeException | Error e) {
                handle.close();
                throw e;
            }
            giveBack(handle);
            return answer;
        } finally {
            free.release();
        }
    }

    private void acquire() {
        try {
            if (!free.tryAcquire(WAIT_S, TimeUnit.SECONDS)) {
                throw new IllegalStateException("no connection to the store came free in " + WAIT_S + " s");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while waiting for the store", e);
        }
    }

    private Handle take() {
        synchronized (idle) {
            if (!idle.isEmpty()) {
                return idle.pop();
            }
        }
        return jdbi.open();
    }

    private void giveBack(Handle handle) {
        synchronized (idle) {
            if (!closed) {
                idle.push(handle);
                return;
            }
        }
        handle.close();
    }

    @Override
    public void close() {
        synchronized (idle) {
            closed = true;
            idle.forEach(Handle::close);
            idle.clear();
        }
    }
}

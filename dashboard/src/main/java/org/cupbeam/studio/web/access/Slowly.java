package org.cupbeam.studio.web.access;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;

/** Has slow work done one at a time, so that many tries cannot take all of the machine. */
final class Slowly {
    private static final int FOREVER_MS = 20_000;

    private final ReentrantLock hashing = new ReentrantLock(true);

    <T> T done(Supplier<T> work) {
        try {
            if (!hashing.tryLock(FOREVER_MS, TimeUnit.MILLISECONDS)) {
                throw new IllegalStateException("too many are signing in at once");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while waiting to sign in", e);
        }
        try {
            return work.get();
        } finally {
            hashing.unlock();
        }
    }
}

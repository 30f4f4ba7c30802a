package org.cupbeam.studio.web;

import jakarta.servlet.AsyncContext;
import jakarta.servlet.AsyncEvent;
import jakarta.servlet.AsyncListener;
import jakarta.servlet.ServletOutputStream;
import jakarta.servlet.WriteListener;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One browser on a stream. Nobody ever waits for it: what it cannot take yet is queued, and when the queue is full it is
 * let go; it will connect again and get the whole state. It has no thread of its own.
 */
final class Viewer implements Stream.Watcher, WriteListener, AsyncListener {
    private static final Logger LOG = LoggerFactory.getLogger(Viewer.class);
    private static final int MOST_WAITING = 32;

    private final AsyncContext exchange;
    private final ServletOutputStream out;
    private final Runnable onGone;
    private final Deque<byte[]> waiting = new ArrayDeque<>();
    private boolean toFlush;
    private boolean gone;

    /** @param onGone is called once, when the browser is no longer there */
    Viewer(AsyncContext exchange, ServletOutputStream out, Runnable onGone) {
        this.exchange = exchange;
        this.out = out;
        this.onGone = onGone;
    }

    @Override
    public synchronized boolean offer(byte[] frame) {
        if (gone) {
            return false;
        }
        if (waiting.size() >= MOST_WAITING) {
            LOG.info("a board that takes nothing in is let go; it will come back");
            end();
            return false;
        }
        waiting.add(frame);
        return write();
    }

    @Override
    public synchronized void onWritePossible() {
        if (!gone) {
            write();
        }
    }

    @Override
    public synchronized void onError(Throwable why) {
        LOG.debug("a board has gone: {}", why.toString());
        end();
    }

    /** Writes as much as goes without waiting; the container calls again once more goes. */
    private boolean write() {
        try {
            while (!waiting.isEmpty() && out.isReady()) {
                out.write(waiting.poll());
                toFlush = true;
            }
            if (toFlush && waiting.isEmpty() && out.isReady()) {
                toFlush = false;
                out.flush();
            }
            return true;
        } catch (IOException | IllegalStateException e) {
            onError(e);
            return false;
        }
    }

    @Override
    public synchronized void end() {
        if (gone) {
            return;
        }
        gone = true;
        waiting.clear();
        try {
            exchange.complete();
        } catch (IllegalStateException e) {
            LOG.debug("already over: {}", e.toString());
        }
        onGone.run();
    }

    @Override
    public void onComplete(AsyncEvent event) {
        end();
    }

    @Override
    public void onTimeout(AsyncEvent event) {
        end();
    }

    @Override
    public void onError(AsyncEvent event) {
        end();
    }

    @Override
    public void onStartAsync(AsyncEvent event) {
        // This exchange is started once.
    }
}

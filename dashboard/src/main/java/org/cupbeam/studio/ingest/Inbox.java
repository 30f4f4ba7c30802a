package org.cupbeam.studio.ingest;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;

/** What has come and waits to be kept, bounded in number and in bytes. Filled by the client's thread, emptied by one other. */
final class Inbox {
    private static final int OVERHEAD_BYTES = 256;

    private final BlockingQueue<Message> waiting;
    private final Semaphore room;
    private final long fullWaitMs;
    private final AtomicLong dropped = new AtomicLong();
    private volatile boolean full;

    /**
     * @param most       messages
     * @param mostBytes  of all of them together, an overhead for each included
     * @param fullWaitMs how long room is waited for, ms
     */
    Inbox(int most, int mostBytes, long fullWaitMs) {
        this.waiting = new ArrayBlockingQueue<>(most);
        this.room = new Semaphore(mostBytes);
        this.fullWaitMs = fullWaitMs;
    }

    /**
     * Puts a message in. Where it is full it waits, so that the broker slows its senders down; then it lets the message go,
     * since its lane will send it again. Until there is room it does not wait a second time: the thread that calls brings
     * the broker's acknowledgements too, and a connection without those for long is taken for dead.
     */
    void offer(Message message) {
        try {
            if (!room.tryAcquire(size(message), waitMs(), TimeUnit.MILLISECONDS)) {
                letGo();
            } else if (!waiting.offer(message, waitMs(), TimeUnit.MILLISECONDS)) {
                room.release(size(message));
                letGo();
            } else {
                full = false;
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private long waitMs() {
        return full ? 0 : fullWaitMs;
    }

    private void letGo() {
        full = true;
        dropped.incrementAndGet();
    }

    /** What came first, and with it what else is there, so many at most; nothing where nothing comes within the wait. */
    List<Message> take(int most, long waitMs) throws InterruptedException {
        Message first = waiting.poll(waitMs, TimeUnit.MILLISECONDS);
        List<Message> messages = new ArrayList<>();
        if (first != null) {
            messages.add(first);
            waiting.drainTo(messages, most - 1);
            messages.forEach(each -> room.release(size(each)));
        }
        return messages;
    }

    int size() {
        return waiting.size();
    }

    /** How many found no room since this was asked before. */
    long droppedSince() {
        return dropped.getAndSet(0);
    }

    private static int size(Message message) {
        return message.payload().length + OVERHEAD_BYTES;
    }
}

package org.cupbeam.link;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.cupbeam.journal.JournalException;
import org.cupbeam.journal.Outbox;

/**
 * Which events go out next. In one connection each event beyond {@code stored} goes out once, in order; and when
 * {@code stored} stands still for 10 s though more has gone out, it goes out again from there, as far ahead of the host
 * as a host that keeps up can be, and not all of a long outbox every 10 s to nobody. What earlier journals of the lane
 * left goes out beside it, the next when the host has said that it has the last, or has said nothing for 10 s.
 */
final class Sending {
    private static final long STILL_NS = TimeUnit.SECONDS.toNanos(10);
    private static final long AHEAD = 1000;

    private final Outbox outbox;
    private long sent;
    private long again;
    private boolean repeating;
    private long stored;
    private long movedNs;
    private long leftThen;
    private long leftNs;

    Sending(Outbox outbox) {
        this.outbox = outbox;
    }

    /** A connection has begun. */
    void begin(long nowNs) {
        stored = outbox.stored();
        sent = stored;
        repeating = false;
        movedNs = nowNs;
        leftThen = -1;
    }

    /** At most so many that are to go out now. */
    List<Outbox.Row> next(int max, long nowNs) throws JournalException {
        look(nowNs);
        boolean leftIsDue = outbox.left() > 0 && (outbox.left() != leftThen || nowNs - leftNs >= STILL_NS);
        if (max <= 0 || sent >= outbox.last() && !repeating && !leftIsDue) {
            return List.of();
        }
        List<Outbox.Row> next = new ArrayList<>(max);
        if (sent < outbox.last()) {
            next.addAll(outbox.after(sent, max));
            sent = next.isEmpty() ? sent : next.get(next.size() - 1).sequence();
        }
        if (repeating && next.size() < max) {
            repeat(max - next.size(), next);
        }
        if (leftIsDue && next.size() < max) {
            leftThen = outbox.left();
            leftNs = nowNs;
            next.addAll(outbox.leftBehind(max - next.size()));
        }
        return next;
    }

    private void look(long nowNs) {
        long storedNow = outbox.stored();
        if (storedNow < stored) {
            repeatFrom(storedNow); // a host that lost some of its store
        }
        if (storedNow != stored || storedNow >= sent) {
            movedNs = nowNs;
        }
        stored = storedNow;
        sent = Math.max(sent, stored);
        again = Math.max(again, stored);
        if (nowNs - movedNs >= STILL_NS) {
            repeatFrom(stored);
            movedNs = nowNs;
        }
    }

    private void repeatFrom(long sequence) {
        repeating = true;
        again = sequence;
    }

    private void repeat(int max, List<Outbox.Row> next) throws JournalException {
        long end = Math.min(sent, stored + AHEAD);
        for (Outbox.Row row : again < end ? outbox.after(again, max) : List.<Outbox.Row>of()) {
            if (row.sequence() <= end) {
                next.add(row);
                again = row.sequence();
            }
        }
        repeating = again < sent;
    }
}

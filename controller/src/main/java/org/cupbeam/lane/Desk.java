package org.cupbeam.lane;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import org.cupbeam.event.Answer;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.Command;
import org.cupbeam.event.Data;
import org.cupbeam.event.EventJson;
import org.cupbeam.journal.Journal;
import org.cupbeam.journal.JournalException;
import org.cupbeam.journal.Outbox;

/**
 * Where commands arrive, on the link's thread. Whatever has to be looked up on the disk is looked up here, so that the
 * lane's thread need not wait for it: whether the command was answered in an earlier life, and what it speaks of.
 */
final class Desk {
    private static final int WAITING_MAX = 64;

    /**
     * A command to be acted on.
     *
     * @param objection why it cannot be; null where nothing is known against it
     */
    record Asked(Command command, String objection) {
    }

    private final Journal<Told> journal;
    private final Outlet outlet;
    private final Runnable wake;
    private final ArrayBlockingQueue<Asked> waiting = new ArrayBlockingQueue<>(WAITING_MAX);

    Desk(Journal<Told> journal, Outlet outlet, Runnable wake) {
        this.journal = journal;
        this.outlet = outlet;
        this.wake = wake;
    }

    /** Takes a command; false, and not taken, while too many wait. */
    boolean hear(Command command) {
        String objection = null;
        try {
            Optional<Answer> before = journal.answer(command.id());
            if (before.isPresent()) {
                outlet.answer(before.get());
                return true;
            }
            objection = command.ask() instanceof Command.Void ask ? objectionTo(ask.of()) : null;
        } catch (JournalException e) {
            objection = "the journal cannot be read (" + e.getMessage() + ")";
        }
        boolean taken = waiting.offer(new Asked(command, objection));
        wake.run();
        return taken;
    }

    /** The next command; null where none waits. The lane's thread. */
    Asked next() {
        return waiting.poll();
    }

    /** What speaks against an attempt by this sequence; null where it is one, or so old that only the host can tell. */
    private String objectionTo(long of) throws JournalException {
        if (of > 0 && of <= journal.last()) {
            List<Outbox.Row> found = journal.after(of - 1, 1);
            if (found.isEmpty() || found.get(0).sequence() != of || isAttempt(found.get(0))) {
                return null;
            }
        }
        return "nothing was putted under the number " + of + ": look at the record and ask again";
    }

    private static boolean isAttempt(Outbox.Row row) {
        try {
            return EventJson.envelope(row.payload()).type().equals(Data.ATTEMPT);
        } catch (BadMessage e) {
            return false;
        }
    }
}

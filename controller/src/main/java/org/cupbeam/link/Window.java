package org.cupbeam.link;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.cupbeam.event.Answer;

/** What has gone out in this connection and is not acknowledged yet. */
final class Window {
    /** The most events under way at once; everything else of the lane's is a handful beside. */
    static final int EVENTS = 8;
    private static final int ANSWERS = 4;
    private static final long SLOW_NS = TimeUnit.SECONDS.toNanos(20);

    /** What sort of message. */
    enum Kind { EVENT, SCORE, HEALTH, ANSWER, GOODBYE }

    private record Pending(Kind kind, long sinceNs, Answer answer) {
    }

    private final Map<Long, Pending> pending = new LinkedHashMap<>();
    private long tags;

    /** How many more events may go out now. */
    int eventRoom() {
        return EVENTS - count(Kind.EVENT);
    }

    boolean answerRoom() {
        return count(Kind.ANSWER) < ANSWERS;
    }

    boolean has(Kind kind) {
        return count(kind) > 0;
    }

    /** Takes one in, and gives its tag. */
    long add(Kind kind, long nowNs) {
        pending.put(++tags, new Pending(kind, nowNs, null));
        return tags;
    }

    long add(Answer answer, long nowNs) {
        pending.put(++tags, new Pending(Kind.ANSWER, nowNs, answer));
        return tags;
    }

    /** One is acknowledged; those of an earlier connection are passed over. */
    void acknowledged(long tag) {
        pending.remove(tag);
    }

    /** Whether the oldest has waited for so long that the connection must be dead. */
    boolean isStuck(long nowNs) {
        return !pending.isEmpty() && nowNs - pending.values().iterator().next().sinceNs >= SLOW_NS;
    }

    /** Forgets all; gives the answers among them, which are owed still. */
    List<Answer> clear() {
        List<Answer> owed = new ArrayList<>();
        for (Pending each : pending.values()) {
            if (each.answer != null) {
                owed.add(each.answer);
            }
        }
        pending.clear();
        return owed;
    }

    private int count(Kind kind) {
        int count = 0;
        for (Pending each : pending.values()) {
            count += each.kind == kind ? 1 : 0;
        }
        return count;
    }
}

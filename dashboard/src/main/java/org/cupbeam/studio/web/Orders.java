package org.cupbeam.studio.web;

import java.time.Duration;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BiPredicate;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Command;
import org.cupbeam.event.Topics;

/**
 * Commands on their way to the lanes, and whoever waits for what the lanes say to them. The same command given again
 * while it waits is one command; given again later it acts once all the same, since lanes know commands by their ids.
 */
final class Orders {
    private static final int MOST_WAITING = 256;

    private record Key(Topics lane, String command) {
    }

    private final Map<Key, CompletableFuture<Answer>> waiting = new ConcurrentHashMap<>();
    private final Duration patience;
    private volatile BiPredicate<Topics, Command> sender = (lane, command) -> false;

    /** @param patience for how long an answer is waited for */
    Orders(Duration patience) {
        this.patience = patience;
    }

    /** @param how sends a command, or gives false where it cannot go out */
    void sendBy(BiPredicate<Topics, Command> how) {
        sender = how;
    }

    /**
     * Gives a command to a lane.
     *
     * @return the lane's answer, when it comes; fails with a {@link Refusal} where none does
     */
    CompletableFuture<Answer> give(Topics lane, Command command) {
        Key key = new Key(lane, command.id());
        if (waiting.size() >= MOST_WAITING) {
            return CompletableFuture.failedFuture(Refusal.tooMany("Too many wait for the lanes. Try again in a moment."));
        }
        CompletableFuture<Answer> fresh = new CompletableFuture<>();
        CompletableFuture<Answer> there = waiting.putIfAbsent(key, fresh);
        if (there != null) {
            return there.handle(Orders::outcome);
        }
        fresh.orTimeout(patience.toMillis(), TimeUnit.MILLISECONDS);
        CompletableFuture<Answer> told = fresh.handle((answer, trouble) -> {
            waiting.remove(key, fresh); // before anybody is told, who may ask again at once
            return outcome(answer, trouble);
        });
        if (!sender.test(lane, command)) {
            fresh.completeExceptionally(Refusal.noAnswer(
                    "The studio computer does not reach its lanes at the moment. Nothing was sent."));
        }
        return told;
    }

    /** A lane has answered. */
    void answered(Topics lane, Answer answer) {
        CompletableFuture<Answer> asker = waiting.get(new Key(lane, answer.id()));
        if (asker != null) {
            asker.complete(answer);
        }
    }

    int waiting() {
        return waiting.size();
    }

    private static Answer outcome(Answer answer, Throwable trouble) {
        if (trouble instanceof TimeoutException) {
            throw Refusal.noAnswer("The lane has not answered. It may have done it all the same: look at the score.");
        }
        if (trouble instanceof Refusal refusal) {
            throw refusal;
        }
        if (trouble != null) {
            throw new IllegalStateException("a command that failed in no known way", trouble);
        }
        return answer;
    }
}

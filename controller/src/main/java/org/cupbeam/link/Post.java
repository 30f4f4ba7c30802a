package org.cupbeam.link;

import java.util.ArrayDeque;
import java.util.List;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Health;
import org.cupbeam.event.Score;

/**
 * What the lane wants said, besides events: the latest score, the latest health, and answers. The lane's thread puts in
 * and never waits; the link's takes out. While the broker is away the latest of each is enough.
 */
final class Post {
    /** The most answers that wait; more than that, and the oldest are gone: the asker asks again. */
    private static final int ANSWERS = 256;

    private final ArrayDeque<Answer> answers = new ArrayDeque<>();
    private Score score;
    private Health.Report report;
    private boolean scoreIsNew;
    private boolean reportIsNew;

    synchronized void score(Score latest) {
        score = latest;
        scoreIsNew = true;
    }

    synchronized void report(Health.Report latest) {
        report = latest;
        reportIsNew = true;
    }

    synchronized void answer(Answer answer) {
        if (answers.size() == ANSWERS) {
            answers.removeFirst();
        }
        answers.addLast(answer);
    }

    /** These could not be delivered, and come before the others. */
    synchronized void answerAgain(List<Answer> owed) {
        for (int i = owed.size() - 1; i >= 0 && answers.size() < ANSWERS; i--) {
            answers.addFirst(owed.get(i));
        }
    }

    /** A new connection: the broker may hold nothing of ours any more. */
    synchronized void sayAllAgain() {
        scoreIsNew = score != null;
        reportIsNew = report != null;
    }

    synchronized void sayHealthAgain() {
        reportIsNew = report != null;
    }

    /** The score, if it has not been taken yet; else null. */
    synchronized Score takeScore() {
        Score taken = scoreIsNew ? score : null;
        scoreIsNew = false;
        return taken;
    }

    /** The health, if it has not been taken yet; else null. */
    synchronized Health.Report takeReport() {
        Health.Report taken = reportIsNew ? report : null;
        reportIsNew = false;
        return taken;
    }

    /** The health, taken already or not; null where none was ever given. */
    synchronized Health.Report latestReport() {
        return report;
    }

    synchronized Answer takeAnswer() {
        return answers.pollFirst();
    }
}

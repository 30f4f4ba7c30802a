package org.cupbeam.lane;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Health;
import org.cupbeam.event.Score;

/** Keeps whatever a lane lets be known. */
final class FakeOutlet implements Outlet {
    final List<Score> scores = new ArrayList<>();
    final List<Health.Report> healths = new ArrayList<>();
    final List<Answer> answers = new ArrayList<>();
    /** What came, in order: a word each. */
    final List<String> order = new ArrayList<>();

    @Override
    public void written() {
        order.add("written");
    }

    @Override
    public void score(Score score) {
        order.add("score");
        scores.add(score);
    }

    @Override
    public void health(Health.Report report) {
        healths.add(report);
    }

    @Override
    public void answer(Answer answer) {
        order.add("answer");
        answers.add(answer);
    }

    Score score() {
        return scores.get(scores.size() - 1);
    }

    Health.Report health() {
        return healths.get(healths.size() - 1);
    }

    Answer answer() {
        return answers.get(answers.size() - 1);
    }
}

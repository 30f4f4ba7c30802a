package org.cupbeam.studio;

import java.time.Clock;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Health;
import org.cupbeam.event.Score;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.ingest.News;
import org.cupbeam.studio.store.FaultBook;

/** Whoever wants to hear from lanes: first the boards, then the book of what broke. */
record Listening(News.Reader boards, FaultBook faults, Clock wall) implements News.Reader {
    @Override
    public void score(Topics lane, Score score) {
        boards.score(lane, score);
    }

    @Override
    public void health(Topics lane, Health health) {
        boards.health(lane, health);
        faults.heard(lane, health, wall.millis());
    }

    @Override
    public void answer(Topics lane, Answer answer) {
        boards.answer(lane, answer);
    }
}

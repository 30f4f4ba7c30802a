package org.cupbeam.studio;

import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.Map;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Health;
import org.cupbeam.event.Score;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.ingest.EventLog;
import org.cupbeam.studio.ingest.News;
import org.cupbeam.studio.ingest.Turns;
import org.cupbeam.studio.store.FaultBook;

/** Whoever wants to hear from lanes: first the boards, then, where this host keeps the record, the book of what broke. */
final class Listening implements News.Reader {
    private static final int MOST_LANES = 2_000;

    private final News.Reader boards;
    private final FaultBook faults;
    private final Turns turns;
    private final Clock wall;
    private final Map<Topics, Health> latest = new LinkedHashMap<>();
    private EventLog turn;

    Listening(News.Reader boards, FaultBook faults, Turns turns, Clock wall) {
        this.boards = boards;
        this.faults = faults;
        this.turns = turns;
        this.wall = wall;
    }

    @Override
    public void score(Topics lane, Score score) {
        boards.score(lane, score);
    }

    @Override
    public void health(Topics lane, Health health) {
        boards.health(lane, health);
        if (latest.size() < MOST_LANES || latest.containsKey(lane)) {
            latest.put(lane, health);
        }
        EventLog now = turns.log();
        if (now != null && now == turn) {
            faults.heard(lane, health, wall.millis());
        } else if (now != null) { // another host may have written in the book, and not what came since
            faults.forget();
            latest.forEach((each, last) -> faults.heard(each, last, wall.millis()));
        }
        turn = now;
    }

    @Override
    public void answer(Topics lane, Answer answer) {
        boards.answer(lane, answer);
    }
}

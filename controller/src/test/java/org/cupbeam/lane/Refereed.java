package org.cupbeam.lane;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.drill.Happening;
import org.cupbeam.drill.Happening.Putted;
import org.cupbeam.drill.Happening.RunEnded;
import org.cupbeam.drill.Play;
import org.cupbeam.drill.Step;
import org.cupbeam.event.Data;
import org.cupbeam.event.Event;

/** Plays the putts of a lane's events by the rules, from nothing else, and holds all else that they say to that. */
public final class Refereed {
    private final List<String> runs = new ArrayList<>();
    private final List<String> players = new ArrayList<>();
    private Data.RunStarted started;
    private Play play;
    private List<Happening> due = List.of();
    private int attempts;

    /** @return how many attempts there were */
    public static int attempts(List<Event> events) {
        Refereed referee = new Refereed();
        long sequence = 0;
        for (Event event : events) {
            assertThat(event.sequence()).isEqualTo(++sequence);
            referee.hear(event.data());
        }
        return referee.attempts;
    }

    private void hear(Data data) {
        if (data instanceof Data.RunStarted run) {
            if (run.of().order() == 1) {
                assertThat(due).isEmpty();
                assertThat(play == null || play.standing().over()).as("the run before is over").isTrue();
                runs.clear();
                players.clear();
            }
            started = run;
            runs.add(run.of().run());
            players.add(run.of().player());
            play = Play.begin(run.drill(), players, run.limitMm());
        } else if (data instanceof Data.Attempt attempt) {
            attempts++;
            attempt(attempt);
        } else if (data instanceof Data.RunEnded ended) {
            RunEnded mine = (RunEnded) due.get(0);
            due = due.subList(1, due.size());
            assertThat(ended.of().player()).isEqualTo(mine.player());
            assertThat(ended.of().run()).isEqualTo(runs.get(players.indexOf(mine.player())));
            assertThat(ended.attempts()).isEqualTo(mine.run().tally().attempts());
            assertThat(ended.stationsCleared()).isEqualTo(mine.run().cleared());
            assertThat(ended.endedBy()).isEqualTo(mine.run().endedBy().orElseThrow());
        } else if (data instanceof Data.DuelEnded ended) {
            assertThat(ended.winner()).isEqualTo(((Happening.DuelEnded) due.get(0)).winner().orElse(null));
            due = due.subList(1, due.size());
        }
    }

    private void attempt(Data.Attempt attempt) {
        assertThat(due).isEmpty();
        Step step = play.after(Card.rules(attempt.putt()));
        play = step.play();
        Putted putted = (Putted) step.happenings().get(0);
        due = step.happenings().subList(1, step.happenings().size());
        assertThat(attempt.play()).isEqualTo(new org.cupbeam.event.Play(runs.get(players.indexOf(putted.player())),
                attempt.play().duel(), putted.player(), started.drill().name(), putted.station(), putted.stationMm(),
                putted.visit(), putted.ball(), putted.ballsLeft()));
        assertThat(attempt.putt().overshoot()).isEqualTo(putted.overshot());
    }
}

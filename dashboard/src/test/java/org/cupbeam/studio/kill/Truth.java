package org.cupbeam.studio.kill;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.drill.Happening;
import org.cupbeam.drill.Play;
import org.cupbeam.drill.Putt;
import org.cupbeam.drill.Step;
import org.cupbeam.event.Data;
import org.cupbeam.event.Event;
import org.cupbeam.event.Putt.How;
import org.cupbeam.event.Putt.Outcome;
import org.cupbeam.event.ReplayLine;
import org.cupbeam.event.Score;
import org.cupbeam.track.Attempt;

/** What the putts come to by the rules of the drill, a line for each putt and each end of a run; and the last state. */
final class Truth {
    private final List<String> lines = new ArrayList<>();
    private Play play;

    Truth(Play begun, List<Attempt> putts) {
        play = begun;
        putts.forEach(this::putt);
    }

    List<String> lines() {
        return lines;
    }

    private void putt(Attempt attempt) {
        Step step = play.after(Putt.of(attempt.holed(), attempt.finishMm(), attempt.betweenLowMm()));
        play = step.play();
        for (Happening each : step.happenings()) {
            if (each instanceof Happening.Putted putted) {
                lines.add(ReplayLine.attempt(attempt.timeNs(), said(attempt, putted.overshot()), new ReplayLine.Turn(
                        putted.player(), putted.station(), putted.ball(), putted.ballsLeft())));
            } else if (each instanceof Happening.RunEnded ended) {
                lines.add(ReplayLine.runEnded(ended.player(), ended.run().cleared(), ended.run().tally().attempts(),
                        ended.run().tally().holed(), ended.run().endedBy().orElseThrow()));
            } else if (each instanceof Happening.DuelEnded ended) {
                lines.add(ReplayLine.duelEnded(ended.winner().orElse(null)));
            }
        }
    }

    private static org.cupbeam.event.Putt said(Attempt is, boolean overshot) {
        return new org.cupbeam.event.Putt(is.holed() ? Outcome.HOLED : Outcome.MISSED, is.finishMm(), is.finishSdMm(),
                is.betweenLowMm(), is.betweenHighMm(), overshot, is.speedAtHoleMmPerS(), is.paceMm(), is.rim(),
                How.SENSED);
    }

    /** The same lines, of events. */
    static List<String> lines(List<Event> events) {
        List<String> lines = new ArrayList<>();
        for (Event event : events) {
            if (event.data() instanceof Data.Attempt attempt) {
                lines.add(ReplayLine.attempt(attempt.stamp().monotonicNs(), attempt.putt(), new ReplayLine.Turn(
                        attempt.play().player(), attempt.play().station(), attempt.play().ball(),
                        attempt.play().ballsLeft())));
            } else if (event.data() instanceof Data.RunEnded ended) {
                lines.add(ReplayLine.runEnded(ended.of().player(), ended.stationsCleared(), ended.attempts(),
                        ended.holed(), ended.endedBy()));
            } else if (event.data() instanceof Data.DuelEnded ended) {
                lines.add(ReplayLine.duelEnded(ended.winner()));
            }
        }
        return lines;
    }

    /** Each player's state as it must be now. */
    List<String> standing() {
        List<String> all = new ArrayList<>();
        for (int i = 0; i < play.players().size(); i++) {
            var run = play.standing().runs().get(i);
            all.add(said(play.players().get(i), run.station(), run.cleared(), run.tally().attempts(),
                    run.tally().holed(), run.visit().left(), play.standing().turn() == i));
        }
        return all;
    }

    /** The same, of a score. */
    static List<String> standing(Score score) {
        List<String> all = new ArrayList<>();
        for (int i = 0; i < score.players().size(); i++) {
            Score.Player each = score.players().get(i);
            all.add(said(each.player(), each.station(), each.stationsCleared(), each.attempts(), each.holed(),
                    each.ballsLeft(), score.turn().orElse(-1) == i));
        }
        return all;
    }

    boolean isOver() {
        return play.standing().over();
    }

    private static String said(String player, int station, int cleared, int attempts, int holed, int left, boolean turn) {
        return player + " at " + station + ", cleared " + cleared + ", " + holed + " of " + attempts + " holed, " + left
                + " left" + (turn ? ", to putt" : "");
    }
}

package org.cupbeam.lane;

import java.util.function.Consumer;
import org.cupbeam.drill.Happening;
import org.cupbeam.drill.Happening.DuelEnded;
import org.cupbeam.drill.Happening.Putted;
import org.cupbeam.drill.Happening.RunEnded;
import org.cupbeam.drill.Move;
import org.cupbeam.drill.Play;
import org.cupbeam.drill.Step;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.event.Putt;
import org.cupbeam.event.Putt.How;
import org.cupbeam.event.ReplayLine;
import org.cupbeam.rig.Rig;
import org.cupbeam.track.Attempt;
import org.cupbeam.track.TrackSink;
import org.cupbeam.track.Tracker;

/**
 * A trace played through tracker and drill, told line by line.
 *
 * <p>What the pedal says is done: a miss entered, an attempt taken back, the turn passed on. Without a drill there is
 * nothing to take back or to pass on.
 */
public final class Replay implements EdgeSink {
    private final Tracker tracker;
    private final double limitMm;
    private final Consumer<String> lines;
    private Play play;

    /**
     * @param playOrNull the drill and its players, about to begin; null for attempts alone
     * @param lines      takes each line, without its end
     */
    public Replay(Rig rig, Play playOrNull, Consumer<String> lines) {
        this.lines = lines;
        play = playOrNull;
        limitMm = playOrNull == null ? rig.limitMm() : playOrNull.limitMm();
        tracker = new Tracker(rig, new Told());
        tracker.begin(0);
    }

    @Override
    public void edge(int channel, boolean active, long timeNs) {
        tracker.edge(channel, active, timeNs);
    }

    /** Tells what is settled by this time in the trace, edges or none. */
    public void advance(long timeNs) {
        tracker.advance(timeNs);
    }

    /** The trace is over: tells all that is still open. */
    public void end() {
        tracker.end();
    }

    private final class Told implements TrackSink {
        @Override
        public void attempt(Attempt attempt) {
            told(attempt, How.SENSED);
        }

        @Override
        public void gesture(Gesture gesture, long timeNs) {
            switch (gesture) {
                case MISSED_UNSEEN -> told(Attempt.unseen(timeNs, tracker.unseenMm()), How.ENTERED);
                case TAKE_BACK -> move(new Move.TakeBack());
                case NEXT -> next();
            }
        }
    }

    private void told(Attempt attempt, How how) {
        if (play == null) {
            lines.accept(ReplayLine.attempt(attempt.timeNs(), putt(attempt, attempt.overshoots(limitMm), how), null));
            return;
        }
        Step step = play.after(
                org.cupbeam.drill.Putt.of(attempt.holed(), attempt.finishMm(), attempt.betweenLowMm()));
        play = step.play();
        for (Happening happening : step.happenings()) {
            if (happening instanceof Putted putted) {
                lines.accept(ReplayLine.attempt(attempt.timeNs(), putt(attempt, putted.overshot(), how),
                        new ReplayLine.Turn(putted.player(), putted.station(), putted.ball(), putted.ballsLeft())));
            } else {
                tell(happening);
            }
        }
    }

    private void move(Move move) {
        if (play != null) {
            Step step = move.on(play);
            play = step.play();
            step.happenings().forEach(this::tell);
        }
    }

    /** The turn to the next player; where there is none, the run ends here. */
    private void next() {
        if (play != null) {
            move(play.standing().canPass() ? new Move.Pass() : new Move.End());
        }
    }

    private void tell(Happening happening) {
        if (happening instanceof RunEnded ended) {
            lines.accept(ReplayLine.runEnded(ended.player(), ended.run().cleared(), ended.run().tally().attempts(),
                    ended.run().tally().holed(), ended.run().endedBy().orElseThrow()));
        } else if (happening instanceof DuelEnded ended) {
            lines.accept(ReplayLine.duelEnded(ended.winner().orElse(null)));
        }
    }

    private static Putt putt(Attempt attempt, boolean overshoot, How how) {
        return Words.putt(attempt, overshoot, how);
    }
}

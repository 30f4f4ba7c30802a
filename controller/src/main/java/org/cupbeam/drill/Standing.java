package org.cupbeam.drill;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalInt;

/**
 * Where every player stands, and whose turn it is: one run alone, or a duel.
 *
 * @param round the how-manieth run or duel of the play, from 1
 * @param runs  the players' runs in their order
 * @param turn  index of the player to putt; the first one's when over
 */
public record Standing(int round, List<Run> runs, int turn) {

    public Standing {
        runs = List.copyOf(runs);
    }

    static Standing begin(int round, Drill drill, int players) {
        return new Standing(round, Collections.nCopies(players, Run.begin(drill)), 0);
    }

    /** Whether all runs have ended. */
    public boolean over() {
        return runs.stream().allMatch(Run::ended);
    }

    /** Whether anybody has putted. */
    public boolean begun() {
        return runs.stream().anyMatch(run -> run.tally().attempts() > 0);
    }

    /** Whether somebody else than whose turn it is could putt. */
    public boolean canPass() {
        return nextInPlay() != turn;
    }

    /** The index of the player with the best score; none where that is shared, or nobody to compare with. */
    public OptionalInt winner() {
        List<Score> scores = runs.stream().map(Run::score).toList();
        Score best = Collections.min(scores);
        boolean alone = scores.stream().filter(each -> each.compareTo(best) == 0).count() == 1;
        return alone && scores.size() > 1 ? OptionalInt.of(scores.indexOf(best)) : OptionalInt.empty();
    }

    /** After the attempt of whose turn it is. */
    Standing after(Shot shot, Turns turns) {
        boolean visitOver = shot.run().ended() || shot.run().visit().number() != runs.get(turn).visit().number();
        List<Run> then = new ArrayList<>(runs);
        then.set(turn, shot.run());
        Standing putted = new Standing(round, then, turn).decided();
        return visitOver || turns == Turns.BALL ? putted.passed() : putted;
    }

    /** The turn given to the next player in play; unchanged where there is no other. */
    Standing passed() {
        return new Standing(round, runs, over() ? 0 : nextInPlay());
    }

    /** Everybody's run ended by hand. */
    Standing stopped() {
        return ended(EndedBy.STOPPED, 0);
    }

    /** A duel is over once one player is left in play and has cleared more stations than each other. */
    private Standing decided() {
        List<Run> inPlay = runs.stream().filter(run -> !run.ended()).toList();
        if (runs.size() == 1 || inPlay.size() != 1) {
            return this;
        }
        Run last = inPlay.get(0);
        boolean ahead = runs.stream().filter(Run::ended).allMatch(run -> run.cleared() < last.cleared());
        return ahead ? ended(EndedBy.DUEL, turn) : this;
    }

    private Standing ended(EndedBy by, int thenTurn) {
        return new Standing(round, runs.stream().map(run -> run.ended() ? run : run.ended(by)).toList(), thenTurn);
    }

    private int nextInPlay() {
        for (int step = 1; step <= runs.size(); step++) {
            int next = (turn + step) % runs.size();
            if (!runs.get(next).ended()) {
                return next;
            }
        }
        return turn;
    }
}

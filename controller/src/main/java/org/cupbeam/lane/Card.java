package org.cupbeam.lane;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.cupbeam.drill.EndedBy;
import org.cupbeam.drill.Happening;
import org.cupbeam.drill.Happening.DuelEnded;
import org.cupbeam.drill.Happening.Putted;
import org.cupbeam.drill.Happening.RunEnded;
import org.cupbeam.drill.Move;
import org.cupbeam.drill.Play;
import org.cupbeam.drill.Run;
import org.cupbeam.drill.Standing;
import org.cupbeam.drill.Step;
import org.cupbeam.event.Putt;
import org.cupbeam.lane.Told.Begun;
import org.cupbeam.lane.Told.Tried;

/**
 * The score card: all that a lane knows of its play. Immutable, and nothing but a fold of what the play was told, so that
 * a lane that lost its power has it again.
 *
 * @param begun    what is played; null where nothing is
 * @param play     as it stands; null where nothing is played
 * @param rounds   of each round that has begun the sequence of its first event: what runs and duels are named by. One
 *                 that was taken back to before its beginning keeps its name for when it begins again
 * @param made     the attempts that can be taken back, oldest first; outside any play at most the last one
 * @param sequence of the last event that this comes of; 0 where there is none
 * @param told     how much it was told since the play began
 */
record Card(Begun begun, Play play, Map<Integer, Long> rounds, List<Made> made, long sequence, int told) {
    static final Card BLANK = new Card(null, null, Map.of(), List.of(), 0, 0);

    /**
     * An attempt that counts.
     *
     * @param sequence of its event
     * @param putted   its place in the play; null outside any
     */
    record Made(long sequence, Putt putt, Putted putted) {
    }

    /**
     * What came of being told something.
     *
     * @param starts     whether a round began with it
     * @param happenings an event each, after those of the round's beginning
     */
    record Change(Card card, boolean starts, List<Happening> happenings) {
    }

    Card {
        rounds = Map.copyOf(rounds);
        made = List.copyOf(made);
    }

    static Card of(Iterable<Told> all) {
        Card card = BLANK;
        for (Told each : all) {
            card = card.after(each).card();
        }
        return card;
    }

    /** Whether the next attempt begins a round that has never begun before. */
    boolean startsNext() {
        return play != null && play.standing().over() && !rounds.containsKey(play.standing().round() + 1);
    }

    /** The last attempt's putt; there has to be one. */
    Putt lastPutt() {
        return made.get(made.size() - 1).putt();
    }

    /** Whether an attempt can be taken back. */
    boolean canTakeBack() {
        return !made.isEmpty();
    }

    /** Whether somebody has putted in a run or duel that is not over. */
    boolean underWay() {
        return play != null && play.standing().begun() && !play.standing().over();
    }

    /** Why the turn cannot be passed on; null where it can. */
    String objectionToPass() {
        if (play == null || play.standing().over()) {
            return nothingPlayed();
        }
        return play.standing().canPass() ? null : "nobody else is left in play: end the run instead";
    }

    /** Why there is nothing to end; null where there is. */
    String objectionToEnd() {
        if (play == null || play.standing().over()) {
            return nothingPlayed();
        }
        return play.standing().begun() ? null : "nobody has putted yet: start another drill instead";
    }

    private String nothingPlayed() {
        return play == null ? "no drill is on: start one" : "that is over: the next one begins with the next putt";
    }

    Change after(Told one) {
        if (one instanceof Begun next) {
            return begin(next);
        }
        if (one instanceof Tried tried) {
            return tried(tried);
        }
        if (play == null) {
            return new Change(new Card(null, null, rounds, List.of(), one.sequence(), told + 1), false, List.of());
        }
        return one instanceof Told.TakenBack ? takenBack(one)
                : moved(one, one instanceof Told.Passed ? new Move.Pass() : new Move.End());
    }

    /** What ends, never to go on, where another play begins: an event each. */
    List<Happening> endings() {
        if (play == null) {
            return List.of();
        }
        Standing standing = play.standing();
        List<Happening> endings = new ArrayList<>(play.end().happenings());
        int idle = standing.over() || standing.begun() ? standing.round() + 1 : standing.round();
        for (int round = idle; rounds.containsKey(round); round++) {
            for (String player : play.players()) {
                endings.add(new RunEnded(player, round, stopped(Run.begin(play.drill()))));
            }
            if (play.duel()) {
                endings.add(new DuelEnded(round, Optional.empty()));
            }
        }
        return endings;
    }

    private static Run stopped(Run run) {
        return new Run(run.station(), run.visit(), run.balls(), run.cleared(), run.tally(),
                Optional.of(EndedBy.STOPPED));
    }

    private Change begin(Begun next) {
        Play fresh = Play.begin(next.drill(), next.players(), next.limitMm());
        Card card = new Card(next, fresh, Map.of(1, next.sequence()), List.of(),
                next.sequence() + next.players().size() - 1, 1);
        return new Change(card, true, List.of());
    }

    private Change tried(Tried tried) {
        Putt putt = tried.putt();
        if (play == null) {
            Made alone = new Made(tried.sequence(), putt, null);
            return new Change(new Card(null, null, rounds, List.of(alone), tried.sequence(), told + 1), false, List.of());
        }
        boolean starts = startsNext();
        Map<Integer, Long> named = starts ? named(play.standing().round() + 1, tried.sequence()) : rounds;
        long sequence = tried.sequence() + (starts ? play.players().size() : 0);
        Step step = new Move.Attempt(rules(putt)).on(play);
        List<Made> more = new ArrayList<>(made.subList(made.size() < Play.TAKE_BACKS_MAX ? 0 : 1, made.size()));
        more.add(new Made(sequence, putt, (Putted) step.happenings().get(0)));
        Card card = new Card(begun, step.play(), named, more, sequence + step.happenings().size() - 1, told + 1);
        return new Change(card, starts, step.happenings());
    }

    private Map<Integer, Long> named(int round, long sequence) {
        Map<Integer, Long> named = new HashMap<>(rounds);
        named.put(round, sequence);
        return named;
    }

    private Change takenBack(Told one) {
        Step step = play.takeBack();
        List<Made> fewer = made.subList(0, Math.max(0, made.size() - 1));
        return new Change(new Card(begun, step.play(), rounds, fewer, last(one, step), told + 1), false,
                step.happenings());
    }

    private Change moved(Told one, Move move) {
        Step step = move.on(play);
        return new Change(new Card(begun, step.play(), rounds, made, last(one, step), told + 1), false,
                step.happenings());
    }

    private static long last(Told one, Step step) {
        return one.sequence() + Math.max(0, step.happenings().size() - 1);
    }

    /** A putt as the rules of play take it. */
    static org.cupbeam.drill.Putt rules(Putt putt) {
        return org.cupbeam.drill.Putt.of(putt.outcome() == Putt.Outcome.HOLED, putt.finishMm(), putt.lowMm());
    }
}

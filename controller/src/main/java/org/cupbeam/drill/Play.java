package org.cupbeam.drill;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import org.cupbeam.drill.Happening.DuelEnded;
import org.cupbeam.drill.Happening.Passed;
import org.cupbeam.drill.Happening.Putted;
import org.cupbeam.drill.Happening.RunEnded;
import org.cupbeam.drill.Happening.TakenBack;

/**
 * The play on a lane: one player's runs, or two or more players' duels, one after the other. When one is over, the next
 * begins with the next attempt, in the same order of players.
 *
 * <p>Immutable, and a function of {@link #begin} and the moves since: whoever keeps those can have it back.
 *
 * @param limitMm  beyond which a miss overshoots
 * @param players  each once, in the order of their turns
 * @param standing where everybody stands
 * @param past     what to go back to, the oldest first; at most {@link #TAKE_BACKS_MAX}
 */
public record Play(Drill drill, double limitMm, List<String> players, Standing standing, List<Past> past) {
    /** How many players one lane can have. */
    public static final int PLAYERS_MAX = 8;
    /** How many attempts in a row can be taken back. */
    public static final int TAKE_BACKS_MAX = 1000;

    /** What an attempt changed: where everybody stood before it, and the attempt. */
    public record Past(Standing before, Putted putted) {
    }

    public Play {
        players = List.copyOf(players);
        past = List.copyOf(past);
        if (players.isEmpty() || players.size() > PLAYERS_MAX) {
            throw new IllegalArgumentException("1 to " + PLAYERS_MAX + " players can play, not " + players.size());
        }
        if (players.stream().anyMatch(String::isBlank) || new HashSet<>(players).size() < players.size()) {
            throw new IllegalArgumentException("each player needs a name of their own, other than in " + players);
        }
    }

    /**
     * A play about to begin.
     *
     * @param players    in the order of their turns
     * @param rigLimitMm the limit that holds where the drill has none
     */
    public static Play begin(Drill drill, List<String> players, double rigLimitMm) {
        return new Play(drill, drill.limitMm(rigLimitMm), players, Standing.begin(1, drill, players.size()), List.of());
    }

    /** The play after these moves. */
    public Play after(Iterable<? extends Move> moves) {
        Play play = this;
        for (Move move : moves) {
            play = move.on(play).play();
        }
        return play;
    }

    /** The player whose turn it is has putted; where all is over, the first player of the next run or duel. */
    public Step after(Putt putt) {
        Standing from = standing.over() ? Standing.begin(standing.round() + 1, drill, players.size()) : standing;
        Shot shot = from.runs().get(from.turn()).after(drill, limitMm, putt);
        Standing to = from.after(shot, drill.turns());
        Putted putted = new Putted(players.get(from.turn()), from.round(), shot.run().tally().attempts(),
                shot.visit(), shot.station(), drill.stations().atMm(shot.station()), shot.ball(), shot.ballsLeft(),
                putt.holed(), shot.overshot());
        List<Happening> happenings = new ArrayList<>(List.of(putted));
        happenings.addAll(endings(from, to));
        return new Step(at(to, remembering(new Past(standing, putted))), happenings);
    }

    /** The state before the last attempt, exactly; where there is none left to take back, unchanged. */
    public Step takeBack() {
        if (past.isEmpty()) {
            return new Step(this, List.of());
        }
        Past last = past.get(past.size() - 1);
        return new Step(at(last.before(), past.subList(0, past.size() - 1)), List.of(new TakenBack(last.putted())));
    }

    /** The turn to the next player in play, whose visit goes on where it was; without another, unchanged. */
    public Step pass() {
        Standing to = standing.passed();
        return to.turn() == standing.turn() ? new Step(this, List.of())
                : new Step(at(to, past), List.of(new Passed(player(), players.get(to.turn()))));
    }

    /** Ends what is in play, and the score stands; where nothing has begun or all is over, unchanged. */
    public Step end() {
        if (standing.over() || !standing.begun()) {
            return new Step(this, List.of());
        }
        Standing to = standing.stopped();
        return new Step(at(to, past), endings(standing, to));
    }

    /** Whose attempt the next one is. */
    public String player() {
        return players.get(standing.turn());
    }

    /** Two players or more. */
    public boolean duel() {
        return players.size() > 1;
    }

    private Play at(Standing there, List<Past> withPast) {
        return new Play(drill, limitMm, players, there, withPast);
    }

    private List<Past> remembering(Past latest) {
        List<Past> longer = new ArrayList<>(past.subList(past.size() < TAKE_BACKS_MAX ? 0 : 1, past.size()));
        longer.add(latest);
        return longer;
    }

    /** What ended from one standing to another: the run of whose turn it was first. */
    private List<Happening> endings(Standing from, Standing to) {
        List<Happening> ended = new ArrayList<>();
        for (int step = 0; step < players.size(); step++) {
            int player = (from.turn() + step) % players.size();
            if (!from.runs().get(player).ended() && to.runs().get(player).ended()) {
                ended.add(new RunEnded(players.get(player), to.round(), to.runs().get(player)));
            }
        }
        if (duel() && to.over()) {
            Optional<String> winner = to.winner().isPresent()
                    ? Optional.of(players.get(to.winner().getAsInt())) : Optional.empty();
            ended.add(new DuelEnded(to.round(), winner));
        }
        return ended;
    }
}

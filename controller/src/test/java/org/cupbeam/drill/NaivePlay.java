package org.cupbeam.drill;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/**
 * The rules once more, written the plain way, to check the real ones against: balls that lie about and are picked up,
 * everything changed in place, and an attempt taken back by playing all from the beginning without it.
 */
final class NaivePlay {
    private final Drill drill;
    private final List<String> names;
    private final List<Move> kept = new ArrayList<>();
    private final List<String> told = new ArrayList<>();
    private Player[] players;
    private int turn;

    NaivePlay(Drill drill, List<String> names) {
        this.drill = drill;
        this.names = names;
        begin();
    }

    /** What is told after these moves, one line each, of everything that still counts. */
    static List<String> told(Drill drill, List<String> names, List<Move> moves) {
        NaivePlay all = new NaivePlay(drill, names);
        for (Move move : moves) {
            if (move instanceof Move.TakeBack) {
                all.forgetLastAttempt();
            } else {
                all.kept.add(move);
            }
        }
        NaivePlay counting = new NaivePlay(drill, names);
        all.kept.forEach(counting::move);
        return counting.told;
    }

    private void forgetLastAttempt() {
        for (int i = kept.size() - 1; i >= 0; i--) {
            if (kept.get(i) instanceof Move.Attempt) {
                kept.subList(i, kept.size()).clear();
                return;
            }
        }
    }

    private void begin() {
        players = new Player[names.size()];
        for (int i = 0; i < players.length; i++) {
            players[i] = new Player();
        }
        turn = 0;
    }

    private void move(Move move) {
        if (move instanceof Move.Attempt attempt) {
            if (playing() == 0) {
                begin();
            }
            putt(players[turn], attempt.putt());
        } else if (move instanceof Move.Pass && playing() > 0) {
            next();
        } else if (move instanceof Move.End && playing() > 0 && anyTries()) {
            for (int i = 0; i < players.length; i++) {
                stop(players[(turn + i) % players.length], "stopped");
            }
            tellDuel();
        }
    }

    private void putt(Player player, Putt putt) {
        int ball = player.toPutt.pop();
        int visit = player.visits;
        int station = player.station;
        player.tries++;
        player.triesHere++;
        boolean over = !putt.holed() && (putt.finishMm().isPresent() ? putt.finishMm().getAsDouble() > Sketch.LIMIT_MM
                : putt.atLeastMm().isPresent() && putt.atLeastMm().getAsDouble() > Sketch.LIMIT_MM);
        if (putt.holed()) {
            player.made++;
            player.madeHere++;
        } else {
            player.bag.remove(Integer.valueOf(ball));
            putt.finishMm().ifPresentOrElse(mm -> player.finishes.add(Math.abs(mm)), () -> player.unknown++);
            if (over && drill.penalty() == Penalty.LOSE_BALL && !player.toPutt.isEmpty()) {
                player.bag.remove(Integer.valueOf(player.toPutt.pop()));
            }
        }
        told.add(names.get(turn) + " station " + station + " ball " + player.triesHere + " left "
                + player.toPutt.size() + (putt.holed() ? " holed" : over ? " overshot" : " missed"));
        whatNow(player, over);
        decide();
        if (playing() == 0) {
            tellDuel();
        } else if (drill.turns() == Turns.BALL || player.why != null || player.visits != visit) {
            next();
        }
    }

    private void whatNow(Player player, boolean over) {
        if (player.madeHere == drill.holed()) {
            player.best = Math.max(player.best, player.station);
            if (player.station == drill.stations().count()) {
                stop(player, "cleared-all");
            } else {
                player.go(player.station + 1);
            }
        } else if (player.toPutt.isEmpty()) {
            stop(player, "out-of-balls");
        } else if (over && drill.penalty() == Penalty.END_RUN) {
            stop(player, "overshoot");
        } else if (over && drill.penalty() == Penalty.BACK_ONE && player.station > 1) {
            player.go(player.station - 1);
        }
    }

    private void decide() {
        if (players.length < 2 || playing() != 1) {
            return;
        }
        Player last = null;
        int bestOther = 0;
        for (Player player : players) {
            if (player.why == null) {
                last = player;
            } else {
                bestOther = Math.max(bestOther, player.best);
            }
        }
        if (last.best > bestOther) {
            stop(last, "duel");
        }
    }

    private void next() {
        do {
            turn = (turn + 1) % players.length;
        } while (players[turn].why != null);
    }

    private void stop(Player player, String why) {
        if (player.why == null) {
            player.why = why;
            told.add(names.get(List.of(players).indexOf(player)) + " ended " + why + " cleared " + player.best
                    + " attempts " + player.tries + " holed " + player.made);
        }
    }

    private void tellDuel() {
        if (players.length < 2) {
            return;
        }
        String winner = "nobody";
        for (int i = 0; i < players.length; i++) {
            boolean beatsAll = true;
            for (int j = 0; j < players.length; j++) {
                beatsAll &= i == j || players[i].beats(players[j]);
            }
            winner = beatsAll ? names.get(i) : winner;
        }
        told.add("duel won by " + winner);
    }

    private int playing() {
        int count = 0;
        for (Player player : players) {
            count += player.why == null ? 1 : 0;
        }
        return count;
    }

    private boolean anyTries() {
        int tries = 0;
        for (Player player : players) {
            tries += player.tries;
        }
        return tries > 0;
    }

    private final class Player {
        final List<Integer> bag = new ArrayList<>();
        final List<Double> finishes = new ArrayList<>();
        final Deque<Integer> toPutt = new ArrayDeque<>();
        int station;
        int visits;
        int triesHere;
        int madeHere;
        int tries;
        int made;
        int unknown;
        int best;
        String why;

        Player() {
            fill();
            go(1);
        }

        void fill() {
            bag.clear();
            for (int ball = 1; ball <= drill.balls(); ball++) {
                bag.add(ball);
            }
        }

        void go(int there) {
            station = there;
            visits++;
            triesHere = 0;
            madeHere = 0;
            if (drill.supply() == Supply.EVERY_STATION) {
                fill();
            }
            toPutt.clear();
            toPutt.addAll(bag);
        }

        boolean beats(Player other) {
            if (best != other.best) {
                return best > other.best;
            }
            if (tries != other.tries) {
                return tries < other.tries;
            }
            return mean() < other.mean();
        }

        double mean() {
            if (finishes.isEmpty()) {
                return unknown == 0 ? 0 : 1e300;
            }
            return Math.rint(finishes.stream().mapToDouble(mm -> mm).average().orElseThrow() * 1e6);
        }
    }
}

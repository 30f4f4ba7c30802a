package org.cupbeam.drill;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** A drill for a test, saying only what the test is about; else a ladder on which one ball holed clears a station. */
record Sketch(int stations, int balls, Supply supply, int holed, Penalty penalty, Turns turns) {
    static final double LIMIT_MM = 500;

    static Sketch of(int stations, int balls) {
        return new Sketch(stations, balls, Supply.EVERY_STATION, 1, Penalty.NONE, Turns.STATION);
    }

    Sketch wholeRun() {
        return new Sketch(stations, balls, Supply.WHOLE_RUN, holed, penalty, turns);
    }

    Sketch clearedBy(int count) {
        return new Sketch(stations, balls, supply, count, penalty, turns);
    }

    Sketch penalty(Penalty other) {
        return new Sketch(stations, balls, supply, holed, other, turns);
    }

    Sketch turns(Turns other) {
        return new Sketch(stations, balls, supply, holed, penalty, other);
    }

    Drill drill() {
        return new Drill("Sketch", new Stations.Ladder(900, 900, stations), balls, supply, holed,
                OptionalDouble.of(LIMIT_MM), penalty, turns);
    }

    /** Plays a score such as "HM OM": H holed, M missed short by 300 mm, O overshot to 600 mm. */
    Play play(String score, String... players) {
        return Play.begin(drill(), players.length == 0 ? List.of("A") : List.of(players), LIMIT_MM)
                .after(moves(score));
    }

    /** One player's run after a score. */
    Run run(String score) {
        return play(score).standing().runs().get(0);
    }

    /** Everything that happened in a score, in order. */
    List<Happening> happenings(String score, String... players) {
        Play play = play("", players);
        List<Happening> all = new ArrayList<>();
        for (Move move : moves(score)) {
            Step step = move.on(play);
            all.addAll(step.happenings());
            play = step.play();
        }
        return all;
    }

    static List<Move> moves(String score) {
        return score.chars().filter(letter -> letter != ' ').<Move>mapToObj(letter -> switch (letter) {
            case 'H' -> new Move.Attempt(Putt.sunk());
            case 'M' -> new Move.Attempt(Putt.missedAt(-300));
            case 'O' -> new Move.Attempt(Putt.missedAt(600));
            case 'U' -> new Move.Attempt(Putt.missed());
            case '<' -> new Move.TakeBack();
            case '>' -> new Move.Pass();
            case '.' -> new Move.End();
            default -> throw new IllegalArgumentException("no move " + (char) letter);
        }).toList();
    }
}

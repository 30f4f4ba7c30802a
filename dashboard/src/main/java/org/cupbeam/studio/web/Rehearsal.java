package org.cupbeam.studio.web;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.EndedBy;
import org.cupbeam.drill.Happening.Putted;
import org.cupbeam.drill.Play;
import org.cupbeam.drill.Putt;
import org.cupbeam.drill.Run;
import org.cupbeam.drill.Step;

/**
 * What a drill's rules make of a row of putts that somebody made up: the rules themselves, played through, up to the end
 * of the first run or duel.
 *
 * @param limitMm the limit that held
 * @param lines   a putt each
 * @param over    whether it came to an end within the putts given
 * @param winner  of the duel; null without one
 * @param sides   how each player stands in the end
 */
record Rehearsal(double limitMm, List<Line> lines, boolean over, String winner, List<Side> sides) {
    /** The most putts that are played through. */
    static final int MOST_PUTTS = 400;
    /** What a putt may be: holed, missed short, missed past the hole, missed beyond the limit. */
    static final String KINDS = "[hsmp]*";
    private static final double BEYOND_MM = 200;
    private static final double SHORT_MM = -300;

    /**
     * One putt, and what came of it for whoever made it.
     *
     * @param putt      as it was given
     * @param lostBall  whether it cost another ball
     * @param toStation where its run stands after it
     * @param cleared   whether it cleared the station
     * @param endedBy   what it ended its run by; null where the run goes on
     */
    record Line(String player, char putt, int station, double stationMm, int visit, int ball, int ballsLeft,
                boolean lostBall, int toStation, boolean cleared, String endedBy) {
    }

    /** How a player stands; the mean miss is null without a miss that has a finish. */
    record Side(String player, int stationsCleared, int attempts, int holed, Double meanMissMm, String endedBy) {
    }

    /**
     * Plays it.
     *
     * @param putts      of {@link #KINDS}, one after another, whoever's turn it is
     * @param rigLimitMm holds where the drill has no limit of its own
     */
    static Rehearsal of(Drill drill, List<String> players, String putts, double rigLimitMm) {
        Play play = Play.begin(drill, players, rigLimitMm);
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < Math.min(putts.length(), MOST_PUTTS) && !play.standing().over(); i++) {
            int turn = play.standing().turn();
            Run before = play.standing().runs().get(turn);
            Step step = play.after(putt(putts.charAt(i), play.limitMm()));
            lines.add(line((Putted) step.happenings().get(0), putts.charAt(i), before,
                    step.play().standing().runs().get(turn)));
            play = step.play();
        }
        boolean over = play.standing().over();
        return new Rehearsal(play.limitMm(), lines, over, over ? winner(play) : null, sides(play));
    }

    private static Putt putt(char kind, double limitMm) {
        return switch (kind) {
            case 'h' -> Putt.sunk();
            case 's' -> Putt.missedAt(SHORT_MM);
            case 'm' -> Putt.missedAt(limitMm / 2);
            case 'p' -> Putt.missedAt(limitMm + BEYOND_MM);
            default -> throw new IllegalArgumentException("no kind of putt: " + kind);
        };
    }

    private static Line line(Putted putted, char kind, Run before, Run after) {
        boolean lost = before.visit().left() - 1 > putted.ballsLeft();
        boolean cleared = before.visit().number() != after.visit().number() && after.station() > before.station()
                || after.endedBy().filter(by -> by == EndedBy.CLEARED_ALL).isPresent();
        return new Line(putted.player(), kind, putted.station(), putted.stationMm(), putted.visit(), putted.ball(),
                putted.ballsLeft(), lost, after.station(), cleared, after.endedBy().map(EndedBy::word).orElse(null));
    }

    private static String winner(Play play) {
        return play.standing().winner().isPresent() ? play.players().get(play.standing().winner().getAsInt()) : null;
    }

    private static List<Side> sides(Play play) {
        List<Side> sides = new ArrayList<>();
        for (int i = 0; i < play.players().size(); i++) {
            Run run = play.standing().runs().get(i);
            sides.add(new Side(play.players().get(i), run.cleared(), run.tally().attempts(), run.tally().holed(),
                    run.tally().finishes() == 0 ? null : run.tally().meanFinishMm(),
                    run.endedBy().map(EndedBy::word).orElse(null)));
        }
        return sides;
    }
}

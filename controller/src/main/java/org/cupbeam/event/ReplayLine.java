package org.cupbeam.event;

import org.cupbeam.drill.EndedBy;

/** What a replay prints: one JSON object a line; lengths and speeds to a tenth, times to 0.1 ms. */
public final class ReplayLine {
    private ReplayLine() {
    }

    /**
     * An attempt's place in a drill.
     *
     * @param player    who putted
     * @param station   from 1
     * @param ball      the how-manieth attempt of the visit, from 1
     * @param ballsLeft still to putt in this visit, after this attempt and its penalty, before any move
     */
    public record Turn(String player, int station, int ball, int ballsLeft) {
    }

    /**
     * An attempt.
     *
     * @param timeNs     time in the trace of its first evidence
     * @param turnOrNull its place in the drill; null without a drill
     * @return the line, without its end
     */
    public static String attempt(long timeNs, Putt putt, Turn turnOrNull) {
        return JsonOut.line(to -> {
            to.number("t_s", Math.round(timeNs / 1e5) / 1e4);
            Parts.putt(to, putt);
            if (turnOrNull != null) {
                to.text("player", turnOrNull.player()).whole("station", turnOrNull.station())
                        .whole("ball", turnOrNull.ball()).whole("balls_left", turnOrNull.ballsLeft());
            }
        });
    }

    /** The end of a run. */
    public static String runEnded(String player, int stationsCleared, int attempts, int holed, EndedBy endedBy) {
        return JsonOut.line(to -> to.flag("run_ended", true).text("player", player)
                .whole("stations_cleared", stationsCleared).whole("attempts", attempts).whole("holed", holed)
                .word("ended_by", endedBy));
    }

    /** The end of a duel. */
    public static String duelEnded(String winnerOrNull) {
        return JsonOut.line(to -> to.flag("duel_ended", true).text("winner", winnerOrNull));
    }
}

package org.cupbeam.studio.web;

import io.javalin.http.Context;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.cupbeam.drill.Drill;
import org.cupbeam.studio.coach.Asked;
import org.cupbeam.studio.insight.Question;
import org.cupbeam.studio.insight.make.Bench;
import org.cupbeam.studio.insight.words.Units;
import org.cupbeam.studio.store.Sight;
import org.cupbeam.studio.store.logbook.LogFilter;
import org.cupbeam.studio.store.logbook.PlayerRow;
import org.cupbeam.studio.store.logbook.Players;
import org.cupbeam.studio.store.logbook.RunRow;
import org.cupbeam.studio.store.logbook.Runs;
import org.jdbi.v3.core.Handle;

/**
 * What a request asks insight for.
 *
 * @param choice  the drill, as it is chosen from; with the number of balls asked for, it is the question's drill
 * @param runs    the player's latest, the latest first
 * @param rival   whom a duel is foreseen against; null for nobody
 * @param lanes   whose putts are looked at; null for any, as where the player was nowhere else. The rival's likewise
 */
record InsightAsked(PlayerRow player, InsightDrills drills, InsightDrills.Choice choice, List<RunRow> runs,
                    PlayerRow rival, List<Integer> lanes, List<Integer> rivalLanes, Question question) {
    private static final String USUAL_BENCHES = "both";
    static final Map<String, List<Bench>> BENCHES = new TreeMap<>(Map.of(USUAL_BENCHES, Bench.published(), "tour",
            List.of(Bench.TOUR), "ninety", List.of(Bench.NINETY)));
    private static final int BALLS_MAX = 12;
    private static final int RUNS = 40;
    private static final double USUAL_LIMIT_MM = 914.4;

    static InsightAsked of(Handle h, Context ctx, ZoneId zone) {
        Sight sight = Access.sight(h, ctx.req());
        PlayerRow player = player(h, sight, LogbookFilter.id(ctx));
        InsightDrills drills = InsightDrills.of(h, sight, player.id());
        InsightDrills.Choice choice = drills.chosen(LogbookFilter.text(ctx, "drill"));
        List<RunRow> runs = runs(h, sight, player.id());
        Integer rival = number(ctx, "against", 1, Integer.MAX_VALUE);
        List<Bench> benches = BENCHES.get(ctx.queryParam("bench") == null ? USUAL_BENCHES : ctx.queryParam("bench"));
        if (benches == null) {
            throw Refusal.badRequest("bench: give one of " + String.join(", ", BENCHES.keySet()) + ".");
        }
        return new InsightAsked(player, drills, choice, runs, rival == null ? null : player(h, sight, rival),
                lanes(h, sight, player), rival == null ? null : lanes(h, sight, player(h, sight, rival)),
                new Question(drill(choice.drill(), number(ctx, "balls", choice.drill().holed(), BALLS_MAX)), limitMm(runs), benches,
                        units(ctx.queryParam("units"), player), zone));
    }

    /** What is asked where an address says nothing else. */
    static Question usual(Handle h, int player, ZoneId zone) {
        return new Question(InsightDrills.of(h, Sight.ALL, player).chosen(null).drill(), limitMm(runs(h, Sight.ALL, player)), BENCHES.get(USUAL_BENCHES),
                units(null, player(h, Sight.ALL, player)), zone);
    }

    private static List<RunRow> runs(Handle h, Sight sight, int player) {
        return Runs.page(h, LogFilter.ALL.player(player).within(sight.scope()), null, RUNS).rows();
    }

    /** Of whoever was nowhere else all putts are seen, and what is remembered of them is the same for everybody. */
    private static List<Integer> lanes(Handle h, Sight sight, PlayerRow player) {
        return sight.isAll() || sight.seesWhole(h, player.id()) ? null : sight.lanes();
    }

    /** What of the player's putts is asked. */
    Asked asked() {
        return new Asked(player.id(), lanes, question);
    }

    Asked rivalAsked() {
        return new Asked(rival.id(), rivalLanes, question);
    }

    private static double limitMm(List<RunRow> runs) {
        return runs.stream().mapToDouble(RunRow::limitMm).filter(mm -> mm >= 0).findFirst().orElse(USUAL_LIMIT_MM);
    }

    /** A number in the address; null where it is not given. */
    static Integer number(Context ctx, String name, int low, int high) {
        String text = LogbookFilter.text(ctx, name);
        if (text == null) {
            return null;
        }
        try {
            int number = Integer.parseInt(text);
            if (number >= low && number <= high) {
                return number;
            }
        } catch (NumberFormatException e) {
            // Told below.
        }
        throw Refusal.badRequest(name + ": give a number from " + low + (high == Integer.MAX_VALUE ? "." : " to " + high + "."));
    }

    private static PlayerRow player(Handle h, Sight sight, int id) {
        return Players.one(h, sight, id).orElseThrow(() -> Refusal.notFound("There is no such player."));
    }

    private static Units units(String textOrNull, PlayerRow player) {
        String asked = textOrNull != null ? textOrNull : player.units();
        return "feet".equals(asked) ? Units.FEET : Units.METRIC;
    }

    private static Drill drill(Drill chosen, Integer ballsOrNull) {
        return ballsOrNull == null || ballsOrNull == chosen.balls() ? chosen : new Drill(chosen.name(), chosen.stations(),
                ballsOrNull, chosen.supply(), chosen.holed(), chosen.limitMm(), chosen.penalty(), chosen.turns());
    }
}

package org.cupbeam.event;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.cupbeam.drill.EndedBy;

/** The score as JSON. */
public final class ScoreJson {
    private static final int MAX_BEAMS = 64;

    private ScoreJson() {
    }

    public static byte[] encode(Score score) {
        return JsonOut.bytes(to -> {
            to.text("studio", score.studio()).text("lane", score.lane()).sequence("sequence", score.sequence())
                    .word("state", score.state())
                    .objectOrNull("drill", score.drill(), drill -> DrillJson.write(drill, score.drill()))
                    .number("limit_mm", score.limitMm())
                    .object("tags", tags -> Parts.tags(tags, score.tags()))
                    .text("duel", score.duel()).text("winner", score.winner());
            optional(to, "turn", score.turn());
            to.objects("players", score.players(), ScoreJson::player)
                    .objectOrNull("last", score.last(), last -> last(last, score.last()))
                    .object("green", green -> Parts.green(green, score.green()))
                    .objects("beams", score.beams(), (beam, at) ->
                            beam.text("name", at.name()).number("position_mm", at.positionMm()))
                    .text("time", score.time().toString());
        });
    }

    public static Score decode(byte[] payload) throws BadMessage {
        Fields from = JsonIn.object(payload);
        Fields drill = from.objectOrNull("drill");
        Fields last = from.objectOrNull("last");
        List<Score.Player> players = new ArrayList<>();
        for (Fields each : from.objects("players", Score.MAX_PLAYERS)) {
            players.add(player(each));
        }
        OptionalInt turn = optional(from, "turn");
        if (turn.orElse(0) >= Math.max(1, players.size())) {
            throw from.bad("turn", "is " + turn.getAsInt(), "give an index into the players");
        }
        List<Score.BeamAt> beams = new ArrayList<>();
        for (Fields each : from.objects("beams", MAX_BEAMS)) {
            beams.add(new Score.BeamAt(each.text("name", Score.MAX_NAME), each.number("position_mm")));
        }
        return new Score(name(from, "studio"), name(from, "lane"), from.sequence("sequence"),
                from.word("state", Score.State.class), drill == null ? null : DrillJson.read(drill),
                from.number("limit_mm"), Parts.tags(from, "tags"), Parts.idOrNull(from, "duel"),
                from.textOrNull("winner", Score.MAX_NAME), turn, players, last == null ? null : last(last),
                Parts.green(from.object("green")), beams, from.time("time"));
    }

    private static void player(JsonOut to, Score.Player player) {
        to.text("player", player.player()).text("run", player.run()).whole("station", player.station())
                .tenth("station_mm", player.stationMm()).whole("stations_cleared", player.stationsCleared())
                .whole("attempts", player.attempts()).whole("holed", player.holed())
                .tenth("mean_miss_mm", player.meanMissMm()).whole("balls_left", player.ballsLeft());
        optional(to, "balls_in_run", player.ballsInRun());
        to.whole("visit", player.visit()).word("ended_by", player.endedBy())
                .objects("putts", player.putts(), (putt, made) -> putt.whole("station", made.station())
                        .word("outcome", made.outcome()).tenth("finish_mm", made.finishMm())
                        .flag("overshoot", made.overshoot()).word("how", made.how()));
    }

    private static Score.Player player(Fields from) throws BadMessage {
        List<Score.PuttMade> putts = new ArrayList<>();
        for (Fields each : from.objects("putts", Score.MAX_PUTTS)) {
            putts.add(new Score.PuttMade(each.count("station", 1), each.word("outcome", Putt.Outcome.class),
                    each.numberOrNaN("finish_mm"), each.flag("overshoot"), each.word("how", Putt.How.class)));
        }
        return new Score.Player(from.text("player", Score.MAX_NAME), Parts.idOrNull(from, "run"),
                from.count("station", 1), from.number("station_mm"), from.count("stations_cleared", 0),
                from.count("attempts", 0), from.count("holed", 0), from.numberOrNaN("mean_miss_mm"),
                from.count("balls_left", 0), optional(from, "balls_in_run"), from.count("visit", 0),
                from.wordOrNull("ended_by", EndedBy.class), putts);
    }

    private static void last(JsonOut to, Score.Last last) {
        to.sequence("sequence", last.sequence()).text("player", last.player());
        optional(to, "station", last.station() > 0 ? OptionalInt.of(last.station()) : OptionalInt.empty());
        to.tenth("station_mm", last.stationMm()).object("attempt", putt -> Parts.putt(putt, last.putt()));
    }

    private static Score.Last last(Fields from) throws BadMessage {
        return new Score.Last(from.sequence("sequence"), from.textOrNull("player", Score.MAX_NAME),
                optional(from, "station").orElse(0), from.numberOrNaN("station_mm"),
                Parts.putt(from.object("attempt")));
    }

    private static void optional(JsonOut to, String key, OptionalInt value) {
        to.number(key, value.isPresent() ? value.getAsInt() : Double.NaN);
    }

    private static OptionalInt optional(Fields from, String key) throws BadMessage {
        return from.has(key) ? OptionalInt.of(from.count(key, 0)) : OptionalInt.empty();
    }

    private static String name(Fields from, String key) throws BadMessage {
        return from.text(key, Topics::isName, Topics.NAME_RULE);
    }
}

package org.cupbeam.event;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalDouble;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.Penalty;
import org.cupbeam.drill.Stations;
import org.cupbeam.drill.Supply;
import org.cupbeam.drill.Turns;

/** A drill as JSON: the keys of a drill file, one to one. */
public final class DrillJson {
    private DrillJson() {
    }

    /** A drill by itself; equal drills give equal text. */
    public static String text(Drill drill) {
        return new String(JsonOut.bytes(to -> write(to, drill)), StandardCharsets.UTF_8);
    }

    public static Drill read(String text) throws BadMessage {
        return read(JsonIn.object(text.getBytes(StandardCharsets.UTF_8)));
    }

    static void write(JsonOut to, Drill drill) {
        to.text("name", drill.name())
                .object("stations", stations -> stations(stations, drill.stations()))
                .object("balls", balls -> balls.whole("count", drill.balls()).word("supply", drill.supply()))
                .object("advance", advance -> advance.whole("holed", drill.holed()))
                .object("overshoot", overshoot -> {
                    drill.limitMm().ifPresent(mm -> overshoot.number("limit_mm", mm));
                    overshoot.word("penalty", drill.penalty());
                })
                .object("duel", duel -> duel.word("turns", drill.turns()));
    }

    private static void stations(JsonOut to, Stations stations) {
        if (stations instanceof Stations.Ladder ladder) {
            to.number("first_mm", ladder.firstMm()).number("step_mm", ladder.stepMm()).whole("count", ladder.count());
        } else if (stations instanceof Stations.Marked marked) {
            to.numbers("at_mm", marked.atMm());
        }
    }

    static Drill read(Fields from) throws BadMessage {
        Fields balls = from.object("balls");
        Fields overshoot = from.objectOrNull("overshoot");
        Fields duel = from.objectOrNull("duel");
        Penalty penalty = overshoot == null ? null : overshoot.wordOrNull("penalty", Penalty.class);
        Turns turns = duel == null ? null : duel.wordOrNull("turns", Turns.class);
        OptionalDouble limitMm = overshoot == null || !overshoot.has("limit_mm")
                ? OptionalDouble.empty() : OptionalDouble.of(overshoot.number("limit_mm"));
        String name = from.text("name", Drill.NAME_MAX);
        int count = balls.count("count", 1);
        Supply supply = balls.word("supply", Supply.class);
        int holed = from.object("advance").count("holed", 1);
        Fields stations = from.object("stations");
        try {
            return new Drill(name, stations(stations), count, supply, holed, limitMm,
                    penalty == null ? Penalty.NONE : penalty, turns == null ? Turns.STATION : turns);
        } catch (IllegalArgumentException e) {
            throw from.bad("it cannot be played: " + e.getMessage(), "give a drill that a drill file could hold");
        }
    }

    private static Stations stations(Fields from) throws BadMessage {
        if (!from.has("at_mm")) {
            return new Stations.Ladder(from.number("first_mm"), from.number("step_mm"), from.count("count", 1));
        }
        List<Double> at = from.numbers("at_mm", Stations.COUNT_MAX);
        if (at.contains(Double.NaN)) {
            throw from.bad("at_mm", "holds null", "give distances in mm");
        }
        return new Stations.Marked(at);
    }
}

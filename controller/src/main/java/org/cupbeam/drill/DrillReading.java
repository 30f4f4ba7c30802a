package org.cupbeam.drill;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.cupbeam.rig.file.BadFileException;
import org.cupbeam.rig.file.Section;

/** A drill file's tables into a {@link Drill}: what each key means, its range, and what must not meet. */
final class DrillReading {
    private static final String IN_REACH = "from the hole's centre in mm, from 100 to 50000";

    private DrillReading() {
    }

    static Drill drill(Section top) throws BadFileException {
        String name = name(top);
        Stations stations = stations(top.table("stations",
                "write [stations], and below it first_mm, step_mm and count, or at_mm"));
        Section ballsTable = top.table("balls", "write [balls], and below it count and supply");
        int balls = ballsTable == null ? -1 : ballsTable.whole("count", 1, Drill.BALLS_MAX,
                "how many balls, from 1 to " + Drill.BALLS_MAX);
        Supply supply = ballsTable == null ? Supply.EVERY_STATION : ballsTable.word("supply", Supply.EVERY_STATION);
        nothingElse(ballsTable);
        int holed = holed(top.table("advance", "write [advance], and below it holed"), balls);
        Section overshoot = top.tableOrNull("overshoot");
        OptionalDouble limitMm = overshoot == null ? OptionalDouble.empty() : limitMm(overshoot);
        Penalty penalty = overshoot == null ? Penalty.NONE : overshoot.wordOr("penalty", Penalty.NONE);
        nothingElse(overshoot);
        Section duel = top.tableOrNull("duel");
        Turns turns = duel == null ? Turns.STATION : duel.wordOr("turns", Turns.STATION);
        nothingElse(duel);
        top.nothingElse();
        top.throwIfAnyProblem();
        return new Drill(name, stations, balls, supply, holed, limitMm, penalty, turns);
    }

    private static String name(Section top) {
        String remedy = "what to call the drill, in 1 to " + Drill.NAME_MAX + " characters on one line";
        String name = top.text("name", remedy);
        if (name != null && !Drill.isName(name)) {
            top.problem("name", name.isBlank() ? "is empty" : name.length() > Drill.NAME_MAX
                    ? "is " + name.length() + " characters long" : "has characters that cannot be shown", remedy);
        }
        return name;
    }

    private static Stations stations(Section table) {
        if (table == null) {
            return null;
        }
        Stations stations = table.has("at_mm") ? marked(table) : ladder(table);
        nothingElse(table);
        return stations;
    }

    private static Stations marked(Section table) {
        List<Double> atMm = table.numbers("at_mm", Stations.COUNT_MAX, Stations.NEAREST_MM, Stations.FURTHEST_MM,
                "each station's distance " + IN_REACH);
        for (String key : List.of("first_mm", "step_mm", "count")) {
            if (table.has(key)) {
                table.problem(key, "at_mm already says where the stations are", "leave one of the two out");
                table.numberOr(key, 0, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, "");
            }
        }
        return atMm.isEmpty() || atMm.contains(Double.NaN) ? null : new Stations.Marked(atMm);
    }

    private static Stations ladder(Section table) {
        double firstMm = table.number("first_mm", Stations.NEAREST_MM, Stations.FURTHEST_MM,
                "the first station's distance " + IN_REACH + "; or at_mm, a list of all the stations'");
        double stepMm = table.number("step_mm", 0, Stations.FURTHEST_MM,
                "how much further from the hole each next station stands, in mm, 0 or more; at_mm can go any way");
        int count = table.whole("count", 1, Stations.COUNT_MAX, "how many stations, from 1 to " + Stations.COUNT_MAX);
        double lastMm = firstMm + (count - 1) * stepMm;
        if (count > 0 && lastMm > Stations.FURTHEST_MM) {
            table.problem("count", String.format(Locale.ROOT, "the last station would stand at %.0f mm", lastMm),
                    "fewer stations or a shorter step: 50000 mm is the furthest");
        }
        return count > 0 && lastMm <= Stations.FURTHEST_MM ? new Stations.Ladder(firstMm, stepMm, count) : null;
    }

    private static int holed(Section table, int balls) {
        if (table == null) {
            return -1;
        }
        String remedy = "how many balls holed in a visit clear the station, from 1 to the count of balls";
        int holed = table.whole("holed", 1, Drill.BALLS_MAX, remedy);
        if (balls > 0 && holed > balls) {
            table.problem("holed", "with " + balls + (balls == 1 ? " ball" : " balls") + ", " + holed
                    + " can never be holed", remedy);
        }
        nothingElse(table);
        return holed;
    }

    private static OptionalDouble limitMm(Section table) {
        double limitMm = table.numberOr("limit_mm", -1, 0, Drill.LIMIT_MAX_MM,
                "how far past the hole's centre a miss may finish, in mm, from 0 to 10000; without it the rig's holds");
        return limitMm >= 0 ? OptionalDouble.of(limitMm) : OptionalDouble.empty();
    }

    private static void nothingElse(Section tableOrNull) {
        if (tableOrNull != null) {
            tableOrNull.nothingElse();
        }
    }
}

package org.cupbeam.event;

import org.cupbeam.drill.EndedBy;
import org.cupbeam.drill.Worded;

/** JSON of what events say about runs and duels. */
final class RunJson {
    private enum What implements Worded { STARTED, ENDED, PASSED, DUEL_ENDED }

    private RunJson() {
    }

    static void write(JsonOut to, Data.Run run) {
        if (run instanceof Data.RunStarted started) {
            of(to.word("what", What.STARTED), started.of())
                    .object("drill", drill -> DrillJson.write(drill, started.drill()))
                    .object("tags", tags -> Parts.tags(tags, started.tags()))
                    .number("limit_mm", started.limitMm());
        } else if (run instanceof Data.RunEnded ended) {
            of(to.word("what", What.ENDED), ended.of())
                    .whole("stations_cleared", ended.stationsCleared())
                    .whole("attempts", ended.attempts())
                    .whole("holed", ended.holed())
                    .tenth("mean_miss_mm", ended.meanMissMm())
                    .word("ended_by", ended.endedBy());
        } else if (run instanceof Data.RunPassed passed) {
            of(to.word("what", What.PASSED), passed.of());
        } else if (run instanceof Data.DuelEnded ended) {
            to.word("what", What.DUEL_ENDED).text("duel", ended.duel()).text("winner", ended.winner());
        }
    }

    static Data.Run read(Fields from, Stamp stamp) throws BadMessage {
        return switch (from.word("what", What.class)) {
            case STARTED -> new Data.RunStarted(stamp, of(from), DrillJson.read(from.object("drill")),
                    Parts.tags(from, "tags"), from.number("limit_mm"));
            case ENDED -> new Data.RunEnded(stamp, of(from), from.count("stations_cleared", 0),
                    from.count("attempts", 0), from.count("holed", 0), from.numberOrNaN("mean_miss_mm"),
                    from.word("ended_by", EndedBy.class));
            case PASSED -> new Data.RunPassed(stamp, of(from));
            case DUEL_ENDED -> new Data.DuelEnded(stamp, Parts.id(from, "duel"),
                    from.textOrNull("winner", Score.MAX_NAME));
        };
    }

    private static JsonOut of(JsonOut to, Data.Of of) {
        return to.text("run", of.run()).text("duel", of.duel()).text("player", of.player()).whole("order", of.order());
    }

    private static Data.Of of(Fields from) throws BadMessage {
        return new Data.Of(Parts.id(from, "run"), Parts.idOrNull(from, "duel"), from.text("player", Score.MAX_NAME),
                from.count("order", 1));
    }
}

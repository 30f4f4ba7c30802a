package org.cupbeam.event;

/** JSON of what events say: the {@code data} of an event. */
final class DataJson {
    private DataJson() {
    }

    static void write(JsonOut to, Data data) {
        to.text("boot", data.stamp().boot())
                .whole("monotonic_ns", data.stamp().monotonicNs())
                .word("clock", data.stamp().clock());
        if (data instanceof Data.Attempt attempt) {
            attempt(to, attempt);
        } else if (data instanceof Data.Run run) {
            RunJson.write(to, run);
        } else if (data instanceof Data.Correction correction) {
            to.word("what", correction.what()).sequence("of", correction.of()).text("by", correction.by())
                    .text("reason", correction.reason());
        } else if (data instanceof Data.Clock clock) {
            to.text("wall", clock.wall().toString());
        }
    }

    static Data read(Fields from, String type) throws BadMessage {
        Stamp stamp = new Stamp(Parts.id(from, "boot"), from.whole("monotonic_ns", 0, Long.MAX_VALUE),
                from.word("clock", Stamp.Clock.class));
        return switch (type) {
            case Data.ATTEMPT -> attempt(from, stamp);
            case Data.RUN -> RunJson.read(from, stamp);
            case Data.CORRECTION -> new Data.Correction(stamp, from.word("what", Data.Correction.What.class),
                    from.sequence("of"), from.text("by", Score.MAX_NAME),
                    from.textOrNull("reason", Parts.MAX_TEXT));
            case Data.CLOCK -> new Data.Clock(stamp, from.time("wall"));
            default -> new Data.Other(stamp, type);
        };
    }

    private static void attempt(JsonOut to, Data.Attempt attempt) {
        Play play = attempt.play();
        to.object("attempt", putt -> Parts.putt(putt, attempt.putt()))
                .objectOrNull("play", play, at -> at.text("run", play.run()).text("duel", play.duel())
                        .text("player", play.player()).text("drill", play.drill())
                        .whole("station", play.station()).tenth("station_mm", play.stationMm())
                        .whole("visit", play.visit()).whole("ball", play.ball())
                        .whole("balls_left", play.ballsLeft()))
                .object("tags", tags -> Parts.tags(tags, attempt.tags()))
                .object("green", green -> Parts.green(green, attempt.green()));
    }

    private static Data.Attempt attempt(Fields from, Stamp stamp) throws BadMessage {
        Fields play = from.objectOrNull("play");
        return new Data.Attempt(stamp, Parts.putt(from.object("attempt")), play == null ? null : play(play),
                Parts.tags(from, "tags"), Parts.green(from.object("green")));
    }

    private static Play play(Fields from) throws BadMessage {
        return new Play(Parts.id(from, "run"), Parts.idOrNull(from, "duel"), from.text("player", Score.MAX_NAME),
                from.text("drill", 80), from.count("station", 1), from.number("station_mm"), from.count("visit", 1),
                from.count("ball", 1), from.count("balls_left", 0));
    }
}

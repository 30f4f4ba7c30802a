package org.cupbeam.event;

import java.util.List;

/** JSON of the parts that several messages share. */
final class Parts {
    static final int MAX_TEXT = 400;

    private Parts() {
    }

    static void putt(JsonOut to, Putt putt) {
        to.word("outcome", putt.outcome())
                .tenth("finish_mm", putt.finishMm())
                .tenth("finish_sd_mm", putt.finishSdMm())
                .tenths("finish_between_mm", putt.lowMm(), putt.highMm())
                .flag("overshoot", putt.overshoot())
                .tenth("speed_at_hole_mm_s", putt.speedAtHoleMmPerS())
                .tenth("pace_mm", putt.paceMm())
                .flag("rim", putt.rim())
                .word("how", putt.how());
    }

    static Putt putt(Fields from) throws BadMessage {
        List<Double> between = from.has("finish_between_mm")
                ? from.numbers("finish_between_mm", 2) : List.of(Double.NaN, Double.NaN);
        if (between.size() != 2) {
            throw from.bad("finish_between_mm", "has " + between.size() + " entries", "give two, null where unbounded");
        }
        return new Putt(from.word("outcome", Putt.Outcome.class), from.numberOrNaN("finish_mm"),
                from.numberOrNaN("finish_sd_mm"), between.get(0), between.get(1), from.flag("overshoot"),
                from.numberOrNaN("speed_at_hole_mm_s"), from.numberOrNaN("pace_mm"), from.flag("rim"),
                from.word("how", Putt.How.class));
    }

    static void tags(JsonOut to, Tags tags) {
        if (tags.breaks() != null) {
            to.word("break", tags.breaks());
        }
        if (tags.slope() != null) {
            to.word("slope", tags.slope());
        }
    }

    /** The tags under a key that may be absent. */
    static Tags tags(Fields from, String key) throws BadMessage {
        Fields tags = from.objectOrNull(key);
        return tags == null ? Tags.NONE
                : new Tags(tags.wordOrNull("break", Tags.Break.class), tags.wordOrNull("slope", Tags.Slope.class));
    }

    static void green(JsonOut to, GreenNow green) {
        to.number("stimp_ft", JsonOut.rounded(green.stimpFt(), 1000))
                .number("stimp_sd_ft", JsonOut.rounded(green.stimpSdFt(), 1000));
        if (!Double.isNaN(green.uphillPercent())) {
            to.number("uphill_percent", green.uphillPercent());
        }
        if (!Double.isNaN(green.sidePercent())) {
            to.number("side_percent", green.sidePercent());
        }
    }

    static GreenNow green(Fields from) throws BadMessage {
        return new GreenNow(from.number("stimp_ft"), from.number("stimp_sd_ft"), from.numberOrNaN("uphill_percent"),
                from.numberOrNaN("side_percent"));
    }

    static String id(Fields from, String key) throws BadMessage {
        return from.text(key, Command.MAX_ID);
    }

    static String idOrNull(Fields from, String key) throws BadMessage {
        return from.textOrNull(key, Command.MAX_ID);
    }
}

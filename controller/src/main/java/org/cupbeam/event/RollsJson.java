package org.cupbeam.event;

import java.util.ArrayList;
import java.util.List;

/** The rolls of a test as JSON: a part of a lane's health. */
final class RollsJson {
    private static final long LONGEST_NS = 600_000_000_000L;

    private RollsJson() {
    }

    static void write(JsonOut to, Rolls rolls) {
        to.tenth("ends_in_s", rolls.endsInS())
                .objects("beams", rolls.beams(), (beam, is) -> beam.text("name", is.name())
                        .number("position_mm", is.positionMm())
                        .number("chord_mm", JsonOut.rounded(is.chordMm(), 1000)))
                .objects("rolls", rolls.rolls(), (roll, is) -> roll.whole("number", is.number()).word("way", is.way())
                        .objects("crossings", is.crossings(), (crossing, at) -> crossing.whole("beam", at.beam())
                                .whole("on_ns", at.onNs()).whole("off_ns", at.offNs())));
    }

    static Rolls read(Fields from) throws BadMessage {
        List<Rolls.Beam> beams = new ArrayList<>();
        for (Fields each : from.objects("beams", Rolls.MAX_BEAMS)) {
            beams.add(new Rolls.Beam(each.text("name", Score.MAX_NAME), each.number("position_mm"),
                    each.number("chord_mm", 1, 100)));
        }
        List<Rolls.Roll> rolls = new ArrayList<>();
        for (Fields each : from.objects("rolls", Rolls.MAX_ROLLS)) {
            rolls.add(new Rolls.Roll(each.count("number", 1), each.word("way", Rolls.Way.class), crossings(each, beams.size())));
        }
        return new Rolls(from.number("ends_in_s"), beams, rolls);
    }

    private static List<Rolls.Crossing> crossings(Fields roll, int beams) throws BadMessage {
        List<Rolls.Crossing> crossings = new ArrayList<>();
        for (Fields each : roll.objects("crossings", Rolls.MAX_BEAMS)) {
            int beam = each.count("beam", 0);
            long onNs = each.whole("on_ns", 0, LONGEST_NS);
            long offNs = each.whole("off_ns", 0, LONGEST_NS);
            if (beam >= beams || offNs <= onNs) {
                throw each.bad("is at beam " + beam + " from " + onNs + " to " + offNs,
                        "give an index into the beams, and a time to leave after that to arrive");
            }
            crossings.add(new Rolls.Crossing(beam, onNs, offNs));
        }
        return crossings;
    }
}

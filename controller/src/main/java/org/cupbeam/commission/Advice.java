package org.cupbeam.commission;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.cupbeam.green.Ball;
import org.cupbeam.green.Hole;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Channel.Kind;
import org.cupbeam.rig.Rig;

/** What of a rig is allowed, and yet will not do well: how its beams stand to the hole, the limit and one another. */
final class Advice {
    /** A beam may stand so far before the limit, or behind it, and still be the limit's. */
    private static final double AT_LIMIT_MM = 30;
    private static final double FAR_PAST_LIMIT_MM = 300;

    private Advice() {
    }

    static List<String> of(Rig rig) {
        List<String> words = new ArrayList<>();
        List<Beam> beams = rig.beams();
        for (int i = 0; i < beams.size(); i++) {
            Beam beam = beams.get(i);
            if (Math.abs(beam.positionMm()) < Hole.RADIUS_MM + Ball.RADIUS_MM) {
                words.add(name(rig, beam) + " stands over the hole or at its rim, where balls fall and rattle; "
                        + "80 mm or more from the hole's centre would do");
            }
            if (i > 0 && beam.positionMm() - beams.get(i - 1).positionMm() < Ball.DIAMETER_MM) {
                words.add(name(rig, beams.get(i - 1)) + " and " + name(rig, beam)
                        + " stand closer than a ball is wide, so that a foot cannot be told from a ball; 60 mm would do");
            }
        }
        if (rig.channelOf(Kind.CUP) < 0) {
            words.add("the hole has no sensor: no putt can be seen to drop");
        }
        limit(rig, words);
        return words;
    }

    private static void limit(Rig rig, List<String> words) {
        double last = rig.beams().isEmpty() ? Double.NEGATIVE_INFINITY : rig.beams().get(rig.beams().size() - 1).positionMm();
        boolean atLimit = rig.beams().stream().anyMatch(each -> each.positionMm() >= rig.limitMm() - AT_LIMIT_MM
                && each.positionMm() <= rig.limitMm() + FAR_PAST_LIMIT_MM);
        if (last < rig.limitMm() - AT_LIMIT_MM) {
            words.add(String.format(Locale.ROOT, "no beam stands at the limit of %.0f mm: whether a ball ran past it is worked out, not"
                    + " seen; a pair there would do", rig.limitMm()));
        } else if (!atLimit) {
            words.add(String.format(Locale.ROOT, "the first beam past the limit of %.0f mm stands far behind it; within %.0f mm would do",
                    rig.limitMm(), FAR_PAST_LIMIT_MM));
        }
    }

    private static String name(Rig rig, Beam beam) {
        return rig.channels().get(beam.channel()).name();
    }
}

package org.cupbeam.commission;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.cupbeam.green.Ball;
import org.cupbeam.green.Hole;
import org.cupbeam.rig.Channel.Kind;
import org.cupbeam.rig.Rig;

/** What of a rig is allowed, and yet will not do well: how its beams stand to the hole, the limit and one another. */
public final class Advice {
    /** A beam may stand so far before the limit, or behind it, and still be the limit's. */
    private static final double AT_LIMIT_MM = 30;
    private static final double FAR_PAST_LIMIT_MM = 300;

    /** A beam. @param positionMm from the hole's centre, past it positive */
    public record Standing(String name, double positionMm) {
    }

    private Advice() {
    }

    static List<String> of(Rig rig) {
        return of(rig.limitMm(), rig.channelOf(Kind.CUP) >= 0, rig.beams().stream()
                .map(each -> new Standing(rig.channels().get(each.channel()).name(), each.positionMm())).toList());
    }

    /**
     * What is to be considered, in words; empty where nothing is.
     *
     * @param limitMm how far past the hole's centre a miss may finish
     * @param hasCup  whether the hole has a sensor
     * @param beams   along the line
     */
    public static List<String> of(double limitMm, boolean hasCup, List<Standing> beams) {
        List<String> words = new ArrayList<>();
        for (int i = 0; i < beams.size(); i++) {
            Standing beam = beams.get(i);
            if (Math.abs(beam.positionMm) < Hole.RADIUS_MM + Ball.RADIUS_MM) {
                words.add(beam.name + " stands over the hole or at its rim, where balls fall and rattle; "
                        + "80 mm or more from the hole's centre would do");
            }
            if (i > 0 && beam.positionMm - beams.get(i - 1).positionMm < Ball.DIAMETER_MM) {
                words.add(beams.get(i - 1).name + " and " + beam.name
                        + " stand closer than a ball is wide, so that a foot cannot be told from a ball; 60 mm would do");
            }
        }
        if (!hasCup) {
            words.add("the hole has no sensor: no putt can be seen to drop");
        }
        limit(limitMm, beams, words);
        return words;
    }

    private static void limit(double limitMm, List<Standing> beams, List<String> words) {
        double last = beams.isEmpty() ? Double.NEGATIVE_INFINITY : beams.get(beams.size() - 1).positionMm;
        boolean atLimit = beams.stream().anyMatch(each -> each.positionMm >= limitMm - AT_LIMIT_MM
                && each.positionMm <= limitMm + FAR_PAST_LIMIT_MM);
        if (last < limitMm - AT_LIMIT_MM) {
            words.add(String.format(Locale.ROOT, "no beam stands at the limit of %.0f mm: whether a ball ran past it is worked out, not"
                    + " seen; a pair there would do", limitMm));
        } else if (!atLimit) {
            words.add(String.format(Locale.ROOT, "the first beam past the limit of %.0f mm stands far behind it; within %.0f mm would do",
                    limitMm, FAR_PAST_LIMIT_MM));
        }
    }
}

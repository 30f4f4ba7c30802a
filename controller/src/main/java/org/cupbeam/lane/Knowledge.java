package org.cupbeam.lane;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.function.Predicate;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;

/** What a lane can no longer know without the sensors that are out of order. */
final class Knowledge {
    private Knowledge() {
    }

    /**
     * In words, for whoever looks at the lane's health.
     *
     * @param believed whether a channel, by its index, can be believed
     */
    static List<String> lost(Rig rig, IntPredicate believed) {
        List<String> lost = new ArrayList<>();
        for (int i = 0; i < rig.channels().size(); i++) {
            if (!believed.test(i)) {
                without(rig.channels().get(i).kind(), lost);
            }
        }
        int[] before = count(rig, believed, beam -> beam.positionMm() < 0);
        int[] behind = count(rig, believed, beam -> beam.positionMm() > 0 && beam.positionMm() < rig.limitMm());
        int[] past = count(rig, believed, beam -> beam.positionMm() >= rig.limitMm());
        if (before[0] > 0 && before[1] == 0) {
            lost.add("misses that stop before the beams past the hole, and the pace of any putt: enter those misses; any"
                    + " clean drop is counted");
        } else if (before[1] < before[0]) {
            lost.add("the pace as closely as usual: one beam before the hole tells less than two");
        }
        if (behind[1] < behind[0]) {
            lost.add("a touch of the rim as surely as usual");
        }
        if (past[0] > 0 && past[1] == 0) {
            lost.add("where a ball stops that runs past the limit, as closely as usual, or at all where no other beam sees"
                    + " it");
        } else if (past[1] < past[0]) {
            lost.add("where a ball stops that runs past the limit as closely as usual");
        }
        return lost;
    }

    private static void without(Channel.Kind kind, List<String> lost) {
        switch (kind) {
            case CUP -> lost.add("which balls dropped: a putt that may have is not counted; enter it");
            case STRIKE -> lost.add("putts that no beam sees: enter them");
            case PEDAL -> lost.add("what the pedal is pressed for: use the page");
            case BEAM -> { }
        }
    }

    /** How many such beams there are, and how many of them can be believed. */
    private static int[] count(Rig rig, IntPredicate believed, Predicate<Beam> which) {
        int[] count = new int[2];
        for (Beam beam : rig.beams()) {
            if (which.test(beam)) {
                count[0]++;
                count[1] += believed.test(beam.channel()) ? 1 : 0;
            }
        }
        return count;
    }
}

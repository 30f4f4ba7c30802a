package org.cupbeam.studio.insight.weak;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.studio.insight.chance.Proportion;
import org.cupbeam.studio.insight.shot.Sessions;
import org.cupbeam.studio.insight.shot.Shot;
import org.cupbeam.studio.insight.words.Words;

/**
 * What a player's misses have in common. Only misses of which it is known count.
 *
 * @param stoppedShort of misses, those that would have stopped before the hole
 * @param ranPast      of misses, those that came to rest beyond the limit
 * @param lippedOut    of misses whose roll was measured, those that touched the rim
 */
public record Misses(Proportion stoppedShort, Proportion ranPast, Proportion lippedOut) {
    /** Fewer misses than this say nothing. */
    private static final int FEWEST = 20;
    /** Held likely of a miss beforehand, for as many misses as it is worth. */
    private static final double USUAL_PAST = 0.2;
    private static final double USUAL_MISSES = 10;

    /**
     * From a player's putts.
     *
     * @param limitMm past the hole, beyond which a miss has run too far
     */
    public static Misses of(Sessions sessions, double limitMm) {
        int[] counts = new int[6];
        for (int session = 0; session < sessions.count(); session++) {
            for (int i = sessions.starts()[session]; i < sessions.starts()[session + 1]; i++) {
                Shot shot = sessions.shots().get(i);
                if (!shot.holed()) {
                    count(counts, shot, limitMm, sessions.measured()[session]);
                }
            }
        }
        return new Misses(new Proportion(counts[0], counts[1]), new Proportion(counts[2], counts[3]),
                new Proportion(counts[4], counts[5]));
    }

    private static void count(int[] counts, Shot shot, double limitMm, boolean measured) {
        boolean knownShort = !shot.hasPace() && shot.finishBelowMm() <= 0;
        if (shot.hasPace() || knownShort) {
            counts[0] += knownShort || shot.paceMm() < 0 ? 1 : 0;
            counts[1]++;
        }
        boolean below = !shot.hasFinish() && shot.finishBelowMm() <= limitMm;
        if (shot.hasFinish() || below) {
            counts[2] += !below && shot.finishMm() > limitMm ? 1 : 0;
            counts[3]++;
        }
        if (measured && shot.hasPace()) {
            counts[4] += shot.rim() ? 1 : 0;
            counts[5]++;
        }
    }

    /** The share of misses beyond the limit, drawn toward the usual where there are few. */
    public double pastShare() {
        return (ranPast.made() + USUAL_PAST * USUAL_MISSES) / (ranPast.tries() + USUAL_MISSES);
    }

    /** As sentences; none where there are too few misses. */
    public List<String> inWords() {
        List<String> sentences = new ArrayList<>();
        if (stoppedShort.tries() >= FEWEST) {
            sentences.add("Of your misses " + stoppedShort.wilson().inHundred() + " stop short of the hole.");
        }
        if (ranPast.tries() >= FEWEST) {
            sentences.add(Words.ofHundred(ranPast.share(), "misses") + " run past the limit.");
        }
        if (lippedOut.tries() >= FEWEST && lippedOut.made() > 0) {
            sentences.add(Words.ofHundred(lippedOut.share(), "misses") + " touch the rim and stay out.");
        }
        return sentences;
    }
}

package org.cupbeam.studio.insight.turn;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.cupbeam.studio.insight.chance.Estimate;
import org.cupbeam.studio.insight.words.Words;

/**
 * A session from which on a player putted better or worse than before.
 *
 * @param session      the first of what is new
 * @param atMs         when it was, in ms since 1970, UTC
 * @param noticed      the session in which a chart passed its limit
 * @param puttsToNotice from the turn until then
 * @param changes      by part, how far its log odds moved from the stretch before to the one after; of those that were
 *                     measured
 * @param changed      of direction and pace, those that moved clearly; none where neither was measured, or clear
 * @param better       whether more putts drop since, or would by what changed
 * @param before       of all the player's putts, the share that would drop by the stretch before
 * @param after        by the stretch after
 * @param bayes        the chance that a turn lies here, by the Bayesian view
 */
public record Turn(int session, long atMs, int noticed, int puttsToNotice, Map<Part, Estimate> changes,
                   List<Part> changed, boolean better, Estimate before, Estimate after, double bayes) {

    public Turn {
        changes = Map.copyOf(changes);
        changed = List.copyOf(changed);
    }

    /** As a sentence; days are told as they are in this zone. */
    public String inWords(ZoneId zone) {
        String day = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH)
                .format(Instant.ofEpochMilli(atMs).atZone(zone));
        return "Since " + day + " you putt " + (better ? "better" : "worse") + ": of the same putts "
                + Words.inHundred(after.value()) + " drop, where it was " + Math.round(100 * before.value()) + ". "
                + whatChanged();
    }

    private String whatChanged() {
        if (changed.isEmpty()) {
            return changes.containsKey(Part.DIRECTION) ? "Whether direction or pace changed is not clear."
                    : "Whether direction or pace changed was not measured.";
        }
        List<String> words = new ArrayList<>();
        for (Part part : changed) {
            boolean up = changes.get(part).value() > 0;
            words.add(part == Part.PACE ? "pace has become " + (up ? "steadier" : "less steady")
                    : "direction has become " + (up ? "truer" : "less true"));
        }
        String sentence = Words.list(words);
        return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1) + ".";
    }
}

package org.cupbeam.studio.insight;

import java.time.ZoneId;
import java.util.List;
import org.cupbeam.drill.Drill;
import org.cupbeam.studio.insight.make.Bench;
import org.cupbeam.studio.insight.words.Units;

/**
 * What insight is asked for a player.
 *
 * @param drill      whose runs are to be foreseen
 * @param rigLimitMm past the hole, the limit that holds where the drill has none
 * @param benches    to compare with
 * @param units      in which lengths are told
 * @param zone       in which days are told
 */
public record Question(Drill drill, double rigLimitMm, List<Bench> benches, Units units, ZoneId zone) {

    public Question {
        benches = List.copyOf(benches);
    }

    /** With the benches that come with the product. */
    public static Question about(Drill drill, double rigLimitMm, Units units, ZoneId zone) {
        return new Question(drill, rigLimitMm, Bench.published(), units, zone);
    }
}

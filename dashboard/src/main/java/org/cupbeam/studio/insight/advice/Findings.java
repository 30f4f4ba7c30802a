package org.cupbeam.studio.insight.advice;

import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.cupbeam.studio.insight.make.StrokeFit;
import org.cupbeam.studio.insight.make.Tries;
import org.cupbeam.studio.insight.run.FairTest;
import org.cupbeam.studio.insight.shot.Sessions;
import org.cupbeam.studio.insight.turn.Turns;
import org.cupbeam.studio.insight.weak.StrokeByTrait;
import org.cupbeam.studio.insight.weak.Weaknesses;
import org.cupbeam.studio.insight.words.Units;

/**
 * All that advice may rest on.
 *
 * @param stroke  empty where too few putts were measured
 * @param byTrait likewise
 * @param places  that the player putts from, with how often
 * @param fair    the drill's fair test; empty where there is none
 * @param zone    in which days are told
 */
public record Findings(Sessions sessions, Turns turns, Weaknesses weaknesses, Optional<StrokeFit> stroke,
                       Optional<StrokeByTrait> byTrait, List<Tries> places, Optional<FairTest> fair, Units units, ZoneId zone) {

    public Findings {
        places = List.copyOf(places);
    }
}

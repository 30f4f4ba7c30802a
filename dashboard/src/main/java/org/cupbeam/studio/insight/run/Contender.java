package org.cupbeam.studio.insight.run;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.drill.Stations;
import org.cupbeam.studio.insight.chance.LogOdds;
import org.cupbeam.studio.insight.make.Skill;
import org.cupbeam.studio.insight.make.StrokeFit;

/**
 * A player as a drill meets them.
 *
 * @param skill  how likely a putt drops
 * @param misses how many of the misses run past a limit
 */
public record Contender(Skill skill, Misses misses) {

    /** The share of misses that run past a limit. */
    @FunctionalInterface
    public interface Misses {
        /** The share, 0 to 1, of misses from here that finish beyond {@code limitMm}. */
        double overshot(double distanceMm, double limitMm);
    }

    /** A player whose stroke was measured: the share follows from the pace. */
    public static Contender of(StrokeFit fit) {
        return new Contender(fit, (distanceMm, limitMm) -> {
            double missed = 1 - fit.curve().at(distanceMm);
            return missed <= 0 ? 0 : Math.min(1, fit.curve().overshot(distanceMm, limitMm) / missed);
        });
    }

    /** A player of whom only makes are known, and one share of misses beyond the limit for every distance. */
    public static Contender of(Skill skill, double overshotShare) {
        return new Contender(skill, (distanceMm, limitMm) -> overshotShare);
    }

    /**
     * The odds at each station.
     *
     * @param form so many standard deviations of what is known of the player above (positive) or below the best guess
     */
    List<Odds> at(Stations stations, double limitMm, double form) {
        List<Odds> odds = new ArrayList<>();
        for (int station = 1; station <= stations.count(); station++) {
            double distanceMm = stations.atMm(station);
            double moved = form * skill.logOddsSd(distanceMm);
            double holed = LogOdds.moved(skill.curve().at(distanceMm), moved);
            odds.add(new Odds(holed, (1 - holed) * misses.overshot(distanceMm, limitMm)));
        }
        return odds;
    }
}

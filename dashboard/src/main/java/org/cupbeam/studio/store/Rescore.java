package org.cupbeam.studio.store;

import java.util.List;
import java.util.Optional;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.EndedBy;
import org.cupbeam.drill.Putt;
import org.cupbeam.drill.Run;
import org.cupbeam.drill.Supply;
import org.cupbeam.drill.Visit;

/**
 * A run's score once some of its putts no longer count, by the drill's own rules: the putts that count are played again
 * from the beginning.
 *
 * <p>They were putted where the lane had the player stand, and the run played again may stand elsewhere by then. So:
 * <ul>
 * <li>a putt from a station that the run, played again, has not come to, or after it has ended, clears nothing;
 * <li>a putt from a station before the one that the run has come to is a new visit there, with the balls that such a visit
 *     starts with;
 * <li>attempts, holed balls and the misses' mean distance are those of all putts that count, wherever they were putted.
 * </ul>
 * A run that does not end when played again was ended as the lane said.
 *
 * @param cleared    stations, the furthest
 * @param meanMissMm null where no miss has a finish
 * @param endedBy    what ended it; empty where, played again, it goes on
 * @param beyond     putts that count and could clear nothing, as above
 */
record Rescore(int cleared, int attempts, int holed, Double meanMissMm, Optional<EndedBy> endedBy, int beyond) {
    /** A putt that counts, and the station that the lane had the player at, from 1. */
    record From(int station, Putt putt) {
    }

    /** @param limitMm beyond which a miss overshoots */
    static Rescore of(Drill drill, double limitMm, List<From> putts) {
        Run run = Run.begin(drill);
        int beyond = 0;
        for (From each : putts) {
            if (run.ended() || each.station() > run.station()) {
                beyond++;
            } else {
                Run there = each.station() < run.station() ? backAt(drill, run, each.station()) : run;
                run = there.after(drill, limitMm, each.putt()).run();
            }
        }
        int holed = (int) putts.stream().filter(each -> each.putt().holed()).count();
        return new Rescore(run.cleared(), putts.size(), holed, meanMissMm(putts), run.endedBy(), beyond);
    }

    private static Run backAt(Drill drill, Run run, int station) {
        int supplied = drill.supply() == Supply.WHOLE_RUN ? run.balls() : drill.balls();
        return new Run(station, new Visit(run.visit().number() + 1, supplied, 0, 0), run.balls(), run.cleared(),
                run.tally(), Optional.empty());
    }

    /** In tenths, as a lane adds them up. */
    private static Double meanMissMm(List<From> putts) {
        List<Long> tenths = putts.stream().filter(each -> each.putt().finishMm().isPresent())
                .map(each -> Math.round(10 * Math.abs(each.putt().finishMm().getAsDouble()))).toList();
        return tenths.isEmpty() ? null : tenths.stream().mapToLong(Long::longValue).sum() / (10.0 * tenths.size());
    }
}

package org.cupbeam.studio.insight.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.Putt;
import org.cupbeam.drill.Run;
import org.cupbeam.drill.Tally;
import org.cupbeam.drill.Visit;

/**
 * Everywhere that a run of a drill can get to, found by playing every outcome from every state. How often a station was
 * visited or putted from so far changes nothing of what can follow, so states that differ in that alone are one.
 */
public final class DrillMap {
    /** A drill with more states than this is not worked out. */
    public static final int STATES_MAX = 20_000;
    private static final int OUTCOMES = 3;

    private final Drill drill;
    private final List<Run> states = new ArrayList<>();
    private final Map<Run, Integer> numbers = new HashMap<>();
    private final List<int[]> leads = new ArrayList<>();

    private DrillMap(Drill drill) {
        this.drill = drill;
    }

    /**
     * Explores a drill; empty where it has too many states.
     *
     * @param rigLimitMm the limit that holds where the drill has none
     */
    public static Optional<DrillMap> of(Drill drill, double rigLimitMm) {
        DrillMap map = new DrillMap(drill);
        map.number(Run.begin(drill));
        for (int next = 0; next < map.states.size(); next++) {
            if (map.states.size() > STATES_MAX) {
                return Optional.empty();
            }
            map.explore(map.states.get(next), drill.limitMm(rigLimitMm));
        }
        return Optional.of(map);
    }

    public Drill drill() {
        return drill;
    }

    /** How many states there are. */
    public int size() {
        return states.size();
    }

    /** Stations cleared in a state that a run is still in. */
    int cleared(int state) {
        return states.get(state).cleared();
    }

    /** The chain for a player; its ends are the stations cleared. */
    Chain chain(List<Odds> byStation) {
        int[][] to = new int[states.size()][];
        double[][] chance = new double[states.size()][];
        for (int state = 0; state < to.length; state++) {
            Odds odds = byStation.get(states.get(state).station() - 1);
            to[state] = leads.get(state);
            chance[state] = new double[] {odds.holed(), Math.max(0, 1 - odds.holed() - odds.overshot()), odds.overshot()};
        }
        return new Chain(to, chance, drill.stations().count() + 1);
    }

    private void explore(Run from, double limitMm) {
        List<Putt> outcomes = List.of(Putt.sunk(), Putt.missedAt(-1), Putt.missedAt(limitMm + 1));
        int[] to = new int[OUTCOMES];
        for (int i = 0; i < OUTCOMES; i++) {
            Run after = from.after(drill, limitMm, outcomes.get(i)).run();
            to[i] = after.ended() ? -1 - after.cleared() : number(after);
        }
        leads.add(to);
    }

    private int number(Run run) {
        Visit visit = new Visit(1, run.visit().left(), 0, run.visit().holed());
        Run bare = new Run(run.station(), visit, run.balls(), run.cleared(), new Tally(0, 0, 0, 0), run.endedBy());
        Integer known = numbers.putIfAbsent(bare, states.size());
        if (known != null) {
            return known;
        }
        states.add(bare);
        return states.size() - 1;
    }
}

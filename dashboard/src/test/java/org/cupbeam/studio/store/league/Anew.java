package org.cupbeam.studio.store.league;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.cupbeam.studio.league.Remembered;
import org.cupbeam.studio.league.Table;
import org.cupbeam.studio.league.Week;
import org.cupbeam.studio.league.Weeks;
import org.cupbeam.studio.store.sums.RunDays;
import org.jdbi.v3.core.Handle;

/** A league's weeks, read anew. */
public final class Anew {
    private Anew() {
    }

    /**
     * The best runs of each week; what is remembered of the weeks has to come to the same table.
     *
     * @param nowMs  by which the weeks have begun
     * @param story  what happened before
     */
    public static List<Played> read(Handle h, League league, long nowMs, Remembered remembered, Object story) {
        Weeks weeks = Weeks.of(league);
        List<Week> kept = remembered.weeks(new LeagueBook.Kept(league.hashCode(), league, 1, "Kim", 0), weeks.begun(nowMs),
                RunDays.between(h, weeks.fromMs(1), weeks.toMs(league.weeks())), week -> Played.in(h, league, week));
        List<Played> best = new ArrayList<>();
        List<Week> now = new ArrayList<>();
        for (Span week : weeks.begun(nowMs)) {
            List<Played> ofWeek = Played.in(h, league, week);
            best.addAll(ofWeek);
            now.add(Week.of(week.number(), ofWeek));
        }
        Map<Integer, String> names = Called.of(h, best.stream().map(Played::player).collect(Collectors.toSet()));
        assertThat(Table.of(kept, names)).as("what is remembered after %s", story).isEqualTo(Table.of(now, names));
        return best;
    }
}

package org.cupbeam.studio.league;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.cupbeam.studio.store.league.LeagueBook.Kept;
import org.cupbeam.studio.store.league.Played;
import org.cupbeam.studio.store.league.Span;
import org.cupbeam.studio.store.sums.RunDays;

/**
 * What the weeks of leagues came to, remembered for as long as the record says that their runs are what they were: a week that is
 * over is worked out once, and again only when something in it was put right or came late. Whichever was not asked for longest is
 * forgotten where there is too much. For any number of threads.
 */
public final class Remembered {
    /** Standings in all: 7 MB of heap, measured. */
    static final int MOST = 120_000;

    private record Key(int league, int version, int week) {
    }

    private record Worked(long changes, Week out) {
    }

    private final Map<Key, Worked> worked = new LinkedHashMap<>(16, 0.75f, true);
    private int standings;

    /**
     * What some weeks of a league came to.
     *
     * @param days of these weeks, asked for before any run of theirs is read
     * @param read finds the best runs of each player in a week, so many as count; is asked for weeks that are not remembered
     */
    public List<Week> weeks(Kept kept, List<Span> spans, RunDays days, Function<Span, List<Played>> read) {
        return spans.stream().map(span -> week(new Key(kept.id(), kept.version(), span.number()), days.within(span.fromMs(), span.toMs()),
                span, read)).toList();
    }

    private Week week(Key key, long changes, Span span, Function<Span, List<Played>> read) {
        Worked before = find(key);
        if (before != null && before.changes == changes) {
            return before.out;
        }
        Week now = Week.of(span.number(), read.apply(span));
        keep(key, new Worked(changes, now));
        return now;
    }

    private synchronized Worked find(Key key) {
        return worked.get(key);
    }

    private synchronized void keep(Key key, Worked now) {
        Worked before = worked.put(key, now);
        standings += now.out.standings().size() - (before == null ? 0 : before.out.standings().size());
        for (Iterator<Worked> oldest = worked.values().iterator(); standings > MOST && oldest.hasNext();) {
            standings -= oldest.next().out.standings().size();
            oldest.remove();
        }
    }

    /** How much of it there is. */
    synchronized int size() {
        return standings;
    }
}

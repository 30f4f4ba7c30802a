package org.cupbeam.studio.store;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;

/**
 * Tells which stays at a station had their first ball holed by the attempts that are being added. The first is the first by its
 * event's number, which no clock changes.
 */
final class Stays {
    /** A quarter hour of a lane. */
    record Place(int lane, long quarter) {
    }

    /** @param first where stays had their first ball holed; @param again quarters to be counted anew */
    record Settled(Map<Place, Integer> first, Set<Place> again) {
    }

    private record Stay(int run, int visit) {
    }

    /** Of a stay: its first ball holed, and how many there are. */
    private record Holed(long first, Place place, int balls) {
        Holed plus(Holed other) {
            return new Holed(Math.min(first, other.first), first < other.first ? place : other.place, balls + other.balls);
        }
    }

    private static final String QUARTER = "(a.at_ms - (a.at_ms % 900000 + 900000) % 900000) / 900000";
    private static final String STAY = " FROM attempt a WHERE a.run_id = ? AND a.visit = ? AND a.holed = 1 AND a.counts = 1";

    private final Map<Stay, Holed> added = new HashMap<>();

    void add(int run, int visit, long sequence, Place place) {
        added.merge(new Stay(run, visit), new Holed(sequence, place, 1), Holed::plus);
    }

    /** The attempts are written already; some of the same stays may have been there before, earlier or later ones. */
    Settled settle(Handle h) {
        Map<Place, Integer> first = new HashMap<>();
        Set<Place> again = new HashSet<>();
        Map<Stay, Holed> now = now(h, added.keySet().stream().map(Stay::run).distinct().toList());
        added.forEach((stay, holed) -> {
            Holed all = now.get(stay);
            if (all.first() == holed.first() && all.balls() == holed.balls()) {
                first.merge(holed.place(), 1, Integer::sum);
            } else if (all.first() == holed.first()) { // what was the first until now is not any more
                again.addAll(places(h, "SELECT DISTINCT a.lane_id, " + QUARTER + STAY, stay.run(), stay.visit()));
            }
        });
        added.clear();
        return new Settled(first, again);
    }

    /** Where something is to be counted anew after an attempt has changed: it may have been the first of its stay. */
    static Set<Place> of(Handle h, int attempt) {
        return places(h, "SELECT a.lane_id, " + QUARTER + " FROM attempt a WHERE a.id = ? UNION SELECT a.lane_id, " + QUARTER
                + " FROM attempt b JOIN attempt a ON a.run_id = b.run_id AND a.visit = b.visit AND a.holed = 1 WHERE b.id = ?", attempt,
                attempt);
    }

    private static Set<Place> places(Handle h, String sql, Object... values) {
        return h.select(sql, values).map((row, ctx) -> new Place(row.getInt(1), row.getLong(2))).set();
    }

    private static Map<Stay, Holed> now(Handle h, List<Integer> runs) {
        if (runs.isEmpty()) {
            return Map.of();
        }
        return h.createQuery("SELECT run_id, visit, min(sequence), count(*) FROM attempt WHERE run_id IN (<runs>) AND holed = 1 "
                + "AND counts = 1 GROUP BY run_id, visit").bindList("runs", runs).map((row, ctx) -> Map.entry(
                new Stay(row.getInt(1), row.getInt(2)), new Holed(row.getLong(3), null, row.getInt(4)))).list().stream()
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
    }
}

package org.cupbeam.studio.store;

import java.util.List;
import org.jdbi.v3.core.Handle;

/**
 * What somebody who looks after some studios may see of the record, as conditions in SQL. The rule:
 *
 * <ul>
 * <li>a lane, its runs, attempts, faults and quarters are its studio's;
 * <li>a player is seen by whoever looks after a studio in which they began a run, or added them;
 * <li>one who was nowhere else is seen whole: what is said of them as such (hand, units, remark, notes, what was changed) is
 * seen and may be changed. Of one who was elsewhere too, only the name and what was played in the studios looked after.
 * </ul>
 *
 * <p>Where all studios are looked after every condition holds, and costs nothing.
 */
public final class Sight {
    /** Of everything. */
    public static final Sight ALL = new Sight(Scope.ALL, List.of());
    private static final String TRUE = "1 = 1";

    private final Scope scope;
    private final List<Integer> lanes;

    private Sight(Scope scope, List<Integer> lanes) {
        this.scope = scope;
        this.lanes = List.copyOf(lanes);
    }

    /** As the lanes are now. */
    public static Sight of(Handle h, Scope scope) {
        return scope.isAll() ? ALL : new Sight(scope, scope.lanes(h));
    }

    public boolean isAll() {
        return scope.isAll();
    }

    public Scope scope() {
        return scope;
    }

    /** The numbers of the lanes that are looked after; empty where all are. */
    public List<Integer> lanes() {
        return lanes;
    }

    /** That a column's lane is looked after. */
    public String lane(String column) {
        return isAll() ? TRUE : Scope.in(column, lanes);
    }

    /** That a column's studio is. */
    public String studio(String column) {
        return isAll() ? TRUE : column + " IN (SELECT id FROM studio WHERE " + scope.named("name") + ")";
    }

    /** That a column's run is of a lane that is. */
    public String run(String column) {
        return isAll() ? TRUE : "EXISTS (SELECT 1 FROM run seen WHERE seen.id = " + column + " AND " + lane("seen.lane_id") + ")";
    }

    /** That a column's attempt is. */
    public String attempt(String column) {
        return isAll() ? TRUE : "EXISTS (SELECT 1 FROM attempt seen WHERE seen.id = " + column + " AND " + lane("seen.lane_id") + ")";
    }

    /** That a column's player is seen. */
    public String player(String column) {
        return isAll() ? TRUE : "(EXISTS (SELECT 1 FROM player_tally seen WHERE seen.player_id = " + column + " AND " + studio("seen.studio_id")
                + ") OR EXISTS (SELECT 1 FROM player_made made WHERE made.player_id = " + column + " AND "
                + scope.named("made.studio") + "))";
    }

    /** That a column's player, who is seen, is seen whole. */
    public String whole(String column) {
        return isAll() ? TRUE : "(NOT EXISTS (SELECT 1 FROM player_tally t WHERE t.player_id = " + column + " AND NOT ("
                + studio("t.studio_id") + ")) AND NOT EXISTS (SELECT 1 FROM player_made made "
                + "WHERE made.player_id = " + column + " AND NOT (" + scope.named("made.studio") + ")))";
    }

    /** That a note, as {@code n}, is seen; on a player who was elsewhere too only one that was written for these studios. */
    public String note() {
        return isAll() ? TRUE : "(n.run_id IS NULL OR " + run("n.run_id") + ") AND (n.attempt_id IS NULL OR " + attempt("n.attempt_id")
                + ") AND (n.player_id IS NULL OR " + player("n.player_id") + " AND (" + whole("n.player_id") + " OR "
                + scope.named("n.studios") + " OR n.studios = '" + scope.text() + "'))";
    }

    /** That a change, as {@code m}, is seen. */
    public String amendment() {
        return isAll() ? TRUE : "((m.run_id IS NOT NULL AND " + run("m.run_id") + ") OR (m.attempt_id IS NOT NULL AND "
                + attempt("m.attempt_id") + ") OR (m.player_id IS NOT NULL AND " + player("m.player_id") + " AND "
                + whole("m.player_id") + "))";
    }

    public boolean seesPlayer(Handle h, int id) {
        return there(h, "player p WHERE p.id = ? AND " + player("p.id"), id);
    }

    /** Whether what is said of a player as such may be changed. */
    public boolean seesWhole(Handle h, int id) {
        return there(h, "player p WHERE p.id = ? AND " + player("p.id") + " AND " + whole("p.id"), id);
    }

    public boolean seesRun(Handle h, int id) {
        return there(h, "run r WHERE r.id = ? AND " + lane("r.lane_id"), id);
    }

    public boolean seesAttempt(Handle h, int id) {
        return there(h, "attempt a WHERE a.id = ? AND " + lane("a.lane_id"), id);
    }

    public boolean seesNote(Handle h, int id) {
        return there(h, "note n WHERE n.id = ? AND " + note(), id);
    }

    private static boolean there(Handle h, String what, int id) {
        return h.select("SELECT 1 FROM " + what, id).mapTo(Integer.class).findOne().isPresent();
    }
}

package org.cupbeam.studio.insight.make;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.green.GreenSpeed;
import org.cupbeam.studio.insight.shot.Break;
import org.cupbeam.studio.insight.shot.Lie;
import org.cupbeam.studio.insight.shot.Sessions;
import org.cupbeam.studio.insight.shot.Shot;

/** A player's putts, counted: all that skill and weaknesses are worked out from, however many putts there were. */
public final class Tallies {
    /** Putts from within this of each other count as from one place. */
    public static final double PLACE_MM = 20;
    private static final int KINDS = Break.values().length * Lie.values().length;
    private static final int PLACES = 2501;
    private static final double USUAL_STIMP_FT = 10;
    /** Slower than this at the hole, speed and pace say too little of how the ball slows down. */
    private static final double PACE_TELLS_MM = 100;

    private final int[] tries = new int[PLACES * KINDS];
    private final int[] made = new int[PLACES * KINDS];
    private final int[] at = new int[PLACES];
    private final double[] distancesMm = new double[PLACES];
    private final DirectionTally direction = new DirectionTally();
    private final PaceTally pace = new PaceTally();
    private double squares;
    private double paces;
    private double stimps;
    private int greens;

    /** Putts of one kind from one place. */
    public record Kind(Tries tries, Break breaks, Lie lie) {
    }

    /** Counts them all. */
    public static Tallies of(Sessions sessions) {
        return of(sessions, 0);
    }

    /** Counts those from a session on. */
    public static Tallies of(Sessions sessions, int from) {
        Tallies tallies = new Tallies();
        for (int session = from; session < sessions.count(); session++) {
            for (int i = sessions.starts()[session]; i < sessions.starts()[session + 1]; i++) {
                Shot shot = sessions.shots().get(i);
                tallies.count(shot);
                if (sessions.measured()[session]) {
                    tallies.measure(shot);
                }
            }
        }
        return tallies;
    }

    /** The place that a distance belongs to, from 1. */
    public static int place(double distanceMm) {
        return (int) Math.min(PLACES - 1, Math.max(1, Math.round(distanceMm / PLACE_MM)));
    }

    /** A number for place and kind together, below {@link #cells}. */
    public static int cell(Shot shot) {
        return place(shot.distanceMm()) * KINDS + shot.breaks().ordinal() * Lie.values().length + shot.lie().ordinal();
    }

    /** How many numbers {@link #cell} can give. */
    public static int cells() {
        return PLACES * KINDS;
    }

    /** Putts by place. */
    public List<Tries> byPlace() {
        List<Tries> rows = new ArrayList<>();
        for (int place = 1; place < PLACES; place++) {
            int allTries = 0;
            int allMade = 0;
            for (int kind = 0; kind < KINDS; kind++) {
                allTries += tries[place * KINDS + kind];
                allMade += made[place * KINDS + kind];
            }
            if (allTries > 0) {
                rows.add(new Tries(distanceMm(place), allTries, allMade));
            }
        }
        return rows;
    }

    /** Putts by place and kind. */
    public List<Kind> byKind() {
        List<Kind> rows = new ArrayList<>();
        for (int cell = 0; cell < tries.length; cell++) {
            if (tries[cell] > 0) {
                rows.add(new Kind(new Tries(distanceMm(cell / KINDS), tries[cell], made[cell]),
                        Break.values()[cell % KINDS / Lie.values().length], Lie.values()[cell % Lie.values().length]));
            }
        }
        return rows;
    }

    /** The make rate from makes alone. */
    public CurveFit makesAlone() {
        return CurveFit.of(Shape.ANGLE_AND_DISTANCE, Prior.ANGLE_AND_DISTANCE, Tries.together(byPlace()));
    }

    /** The make rate by direction alone. */
    public CurveFit oneAngle() {
        return CurveFit.of(Shape.ONE_ANGLE, Prior.ONE_ANGLE, Tries.together(byPlace()));
    }

    /** The stroke, from the putts of sessions that measured it. */
    public StrokeFit stroke() {
        return new StrokeFit(DirectionFit.of(direction), PaceFit.of(pace), decelerationMmPerS2());
    }

    /** Of a ball along these lines: from speeds and paces where there are some, else from the greens' speed. */
    public double decelerationMmPerS2() {
        return paces > 0 ? squares / (2 * paces)
                : GreenSpeed.levelDecelerationMmPerS2(greens > 0 ? stimps / greens : USUAL_STIMP_FT);
    }

    /** The mean distance of a place's putts. */
    private double distanceMm(int place) {
        return distancesMm[place] / at[place];
    }

    private void count(Shot shot) {
        int cell = cell(shot);
        at[cell / KINDS]++;
        distancesMm[cell / KINDS] += shot.distanceMm();
        tries[cell]++;
        made[cell] += shot.holed() ? 1 : 0;
        if (shot.stimpFt() > 0) {
            stimps += shot.stimpFt();
            greens++;
        }
    }

    private void measure(Shot shot) {
        if (shot.hasPace()) {
            pace.add(shot.distanceMm(), shot.paceMm());
            direction.add(Opening.halfAngleRad(shot), shot.holed());
            if (shot.paceMm() > PACE_TELLS_MM && shot.speedAtHoleMmPerS() > 0) {
                squares += shot.speedAtHoleMmPerS() * shot.speedAtHoleMmPerS();
                paces += shot.paceMm();
            }
        } else if (!Double.isNaN(shot.finishBelowMm())) {
            pace.addBelow(shot.distanceMm(), shot.finishBelowMm());
        }
    }
}

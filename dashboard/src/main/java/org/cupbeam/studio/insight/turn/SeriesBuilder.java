package org.cupbeam.studio.insight.turn;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.cupbeam.studio.insight.chance.Bell;
import org.cupbeam.studio.insight.chance.LogOdds;
import org.cupbeam.studio.insight.make.DirectionTally;
import org.cupbeam.studio.insight.make.Opening;
import org.cupbeam.studio.insight.make.PaceFit;
import org.cupbeam.studio.insight.make.StrokeFit;
import org.cupbeam.studio.insight.make.Tallies;
import org.cupbeam.studio.insight.shot.Sessions;
import org.cupbeam.studio.insight.shot.Shot;

/** Puts series together from a player's putts. */
public final class SeriesBuilder {
    /** A length within so many standard deviations of what was meant is near. */
    private static final double NEAR_SDS = 1.5;
    /** So many of the direction's cells count as one. */
    private static final int COARSER = 4;
    private static final double SURE = 1e-4;
    private static final double LOG_ODDS_STEP = 0.05;

    private final Part part;
    private final Sessions sessions;
    private final int[] starts;
    private final int[] numbers;
    private final Map<Long, Integer> shared = new HashMap<>();
    private int[] cells;
    private float[] successes;
    private double[] chances = new double[64];
    private int putts;
    private int used;

    private SeriesBuilder(Part part, Sessions sessions, int cellsMax) {
        this.part = part;
        this.sessions = sessions;
        starts = new int[sessions.count() + 1];
        numbers = new int[cellsMax];
        cells = new int[sessions.shots().size()];
        successes = new float[cells.length];
    }

    /** The chance of a putt from what kind it is. */
    @FunctionalInterface
    public interface Chances {
        double of(Shot shot);
    }

    /** All putts, by the chance of each. */
    public static Series makes(Sessions sessions, Chances chances) {
        return new SeriesBuilder(Part.MAKES, sessions, Tallies.cells()).all(false, (builder, shot) ->
                builder.add(Tallies.cell(shot), shot.holed() ? 1 : 0, shot, chances));
    }

    /** Putts that reached the hole, by how wide it was to each. */
    public static Series direction(Sessions sessions, StrokeFit stroke) {
        double rad = stroke.curve().directionSdRad();
        return new SeriesBuilder(Part.DIRECTION, sessions, DirectionTally.cells()).all(true, (builder, shot) -> {
            int cell = shot.hasPace() ? DirectionTally.cell(Opening.halfAngleRad(shot)) : -1;
            if (cell >= 0) {
                int middle = cell / COARSER * COARSER + COARSER / 2;
                builder.add(cell / COARSER, shot.holed() ? 1 : 0, shot,
                        each -> Opening.chance(DirectionTally.halfAngleRad(middle), rad));
            }
        });
    }

    /**
     * Putts whose pace was measured, by whether they were near the length meant. Of a ball that stopped short of the first
     * beam, only how likely that is is known.
     */
    public static Series pace(Sessions sessions, PaceFit pace) {
        double wide = 2 * Bell.below(-NEAR_SDS);
        double near = (1 - wide) * (1 - pace.mishitShare());
        return new SeriesBuilder(Part.PACE, sessions, 1).all(true, (builder, shot) -> {
            double sdMm = pace.paceSd() * (shot.distanceMm() + pace.aimPastMm());
            if (shot.hasPace()) {
                boolean isNear = Math.abs(shot.paceMm() - pace.aimPastMm()) < NEAR_SDS * sdMm;
                builder.add(0, isNear ? 1 : 0, shot, each -> near);
            } else if (!Double.isNaN(shot.finishBelowMm())) {
                double below = Bell.below((shot.finishBelowMm() - pace.aimPastMm()) / sdMm);
                builder.add(0, (float) Math.max(0, 1 - wide / 2 / Math.max(1e-9, below)), shot, each -> near);
            }
        });
    }

    private interface Step {
        void take(SeriesBuilder builder, Shot shot);
    }

    private Series all(boolean measuredOnly, Step step) {
        for (int session = 0; session < sessions.count(); session++) {
            starts[session] = putts;
            for (int i = sessions.starts()[session]; i < sessions.starts()[session + 1]; i++) {
                if (!measuredOnly || sessions.measured()[session]) {
                    step.take(this, sessions.shots().get(i));
                }
            }
        }
        starts[sessions.count()] = putts;
        return new Series(part, starts, Arrays.copyOf(cells, putts), Arrays.copyOf(successes, putts),
                Arrays.copyOf(chances, used));
    }

    private void add(int cell, float success, Shot shot, Chances by) {
        if (numbers[cell] == 0) {
            numbers[cell] = 1 + sharing(by.of(shot));
        }
        cells[putts] = numbers[cell] - 1;
        successes[putts++] = success;
    }

    /** The number of the cell that all chances about as high as this share. */
    private int sharing(double chance) {
        long step = Math.round(LogOdds.of(Math.min(1 - SURE, Math.max(SURE, chance))) / LOG_ODDS_STEP);
        return shared.computeIfAbsent(step, key -> {
            if (used == chances.length) {
                chances = Arrays.copyOf(chances, 2 * used);
            }
            chances[used] = LogOdds.chance(key * LOG_ODDS_STEP);
            return used++;
        });
    }
}

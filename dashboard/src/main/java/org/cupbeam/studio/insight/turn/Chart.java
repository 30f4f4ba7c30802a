package org.cupbeam.studio.insight.turn;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.studio.insight.chance.LogOdds;

/**
 * A series' control chart, for better and for worse at once. What a player's chances are is learnt from the stretch itself:
 * its first putts, and later those that lie well back. Each chart gives the player the benefit of that doubt.
 *
 * @param part        what it watches
 * @param better      the sum of evidence for better at each session's end
 * @param worse       the same for worse
 * @param betterLimit that a sum must pass for an alarm
 * @param worseLimit  likewise
 * @param alarms      in order
 */
public record Chart(Part part, double[] better, double[] worse, double betterLimit, double worseLimit,
                    List<Alarm> alarms) {

    /**
     * A limit passed.
     *
     * @param change  the first session of what is new: where a split of the stretch explains it best
     * @param noticed the session in which the limit was passed
     * @param up      for the better
     * @param gain    how much better the split explains it: the log of a likelihood ratio
     */
    public record Alarm(int change, int noticed, boolean up, double gain) {
    }

    /**
     * Draws the chart.
     *
     * @param puttsToFalseAlarm how many putts of a player who does not change it takes, on average, until a false alarm
     */
    public static Chart of(Series series, double puttsToFalseAlarm) {
        return new Drawing(series, puttsToFalseAlarm).all();
    }

    private static final class Drawing {
        /** The stretch's own chances must be known to this share of the change that is looked for. */
        private static final double KNOWN_TO = 1 / 3.0;
        /** The chances are learnt from putts further back than these, so that a change does not teach itself. */
        private static final int RECENT_PUTTS = 500;
        /** How many standard deviations of what is not known of the chances are granted. */
        private static final double DOUBT_SDS = 1;
        private static final double GROWN = 1.1;

        private final Series series;
        private final double spread;
        private final double logRatio;
        private final double betterLimit;
        private final double worseLimit;
        private final double[] better;
        private final double[] worse;
        private final List<Alarm> alarms = new ArrayList<>();
        private int drawnTo;

        Drawing(Series series, double putts) {
            this.series = series;
            spread = series.spread();
            logRatio = Math.log(series.part().oddsRatio());
            better = new double[series.sessions()];
            worse = new double[series.sessions()];
            // A chart for better and one for worse share the false alarms.
            betterLimit = limit(2 * putts, Math.exp(logRatio));
            worseLimit = limit(2 * putts, Math.exp(-logRatio));
        }

        private double limit(double putts, double ratio) {
            double[][] mix = series.mix();
            int count = mix[0].length;
            double[] evidence = new double[2 * count];
            double[] chance = new double[2 * count];
            for (int i = 0; i < count; i++) {
                evidence[i] = Cusum.ofSuccess(mix[0][i], ratio) / spread;
                evidence[count + i] = Cusum.ofFailure(mix[0][i], ratio) / spread;
                chance[i] = mix[1][i] * mix[0][i];
                chance[count + i] = mix[1][i] * (1 - mix[0][i]);
            }
            return count == 0 ? Math.log(putts) : Limit.forOneFalseAlarmIn(putts, evidence, chance);
        }

        Chart all() {
            int from = 0;
            while (from < series.sessions()) {
                Alarm alarm = firstAlarm(from);
                if (alarm == null) {
                    break;
                }
                alarms.add(alarm);
                from = alarm.change;
            }
            return new Chart(series.part(), better, worse, betterLimit, worseLimit, List.copyOf(alarms));
        }

        /** The first alarm of a stretch; null where there is none. */
        private Alarm firstAlarm(int from) {
            Baseline baseline = new Baseline(series);
            int learntTo = from;
            while (learntTo < series.sessions() && baseline.sd() > KNOWN_TO * logRatio) {
                baseline.add(learntTo, ++learntTo);
            }
            Evidences evidences = new Evidences(baseline);
            double up = 0;
            double down = 0;
            int learntPutts = series.putts(from, learntTo);
            for (int session = learntTo; session < series.sessions(); session++) {
                int back = learntTo;
                while (series.putts(back + 1, session) >= RECENT_PUTTS) {
                    back++;
                }
                if (series.putts(from, back) > GROWN * learntPutts) {
                    baseline.add(learntTo, back);
                    learntTo = back;
                    learntPutts = series.putts(from, back);
                    evidences = new Evidences(baseline);
                }
                for (int putt = series.start(session); putt < series.start(session + 1); putt++) {
                    up = Cusum.next(up, evidences.better(putt));
                    down = Cusum.next(down, evidences.worse(putt));
                    if (up > betterLimit || down > worseLimit) {
                        draw(session, up, down);
                        return split(from, session, up > betterLimit);
                    }
                }
                draw(session, up, down);
            }
            return null;
        }

        private void draw(int session, double up, double down) {
            if (session >= drawnTo) {
                better[session] = up;
                worse[session] = down;
                drawnTo = session + 1;
            }
        }

        /** Where to split a stretch, its last session included, so that two levels explain it best. */
        private Alarm split(int from, int noticed, boolean up) {
            int change = Math.max(from + 1, noticed);
            double most = 0;
            for (int session = from + 1; session <= noticed; session++) {
                Series.Evidence before = series.evidence(from, session);
                Series.Evidence after = series.evidence(session, noticed + 1);
                boolean rises = after.score() * before.told() > before.score() * after.told();
                double gain = series.gain(from, session, noticed + 1);
                if (rises == up && gain > most) {
                    most = gain;
                    change = session;
                }
            }
            return new Alarm(change, noticed, up, most);
        }

        /** Evidence of successes and failures by cell, for chances as the baseline has them now. */
        private final class Evidences {
            private final double[][] byCell = new double[4][series.cells()];

            Evidences(Baseline baseline) {
                double doubt = DOUBT_SDS * baseline.sd();
                for (int cell = 0; cell < series.cells(); cell++) {
                    double high = LogOdds.moved(series.chance(cell), baseline.moved() + doubt);
                    double low = LogOdds.moved(series.chance(cell), baseline.moved() - doubt);
                    byCell[0][cell] = Cusum.ofFailure(high, Math.exp(logRatio)) / spread;
                    byCell[1][cell] = logRatio / spread;
                    byCell[2][cell] = Cusum.ofFailure(low, Math.exp(-logRatio)) / spread;
                    byCell[3][cell] = -logRatio / spread;
                }
            }

            double better(int putt) {
                return byCell[0][series.cellOf(putt)] + series.success(putt) * byCell[1][series.cellOf(putt)];
            }

            double worse(int putt) {
                return byCell[2][series.cellOf(putt)] + series.success(putt) * byCell[3][series.cellOf(putt)];
            }
        }
    }
}

package org.cupbeam.studio.insight.turn;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Where to cut a player's sessions into stretches, from the alarms of all charts together. */
final class Cuts {
    /** Alarms whose changes lie as near as this are of one change. */
    private static final int SAME_SESSIONS = 5;
    private static final int SAME_PUTTS = 500;
    /** A cut is moved by so many sessions at most to where all series together explain it best. */
    private static final int MOVED_MAX = 8;
    /** A cut that explains less than this (the log of a likelihood ratio), with its neighbours given, is none. */
    private static final double GAIN_MIN = 8;

    private final List<Series> series;
    private final List<Cut> cuts = new ArrayList<>();

    private Cuts(List<Series> series) {
        this.series = series;
    }

    /**
     * A cut between two stretches.
     *
     * @param from    where the stretch before begins
     * @param change  the first session of the stretch after
     * @param to      where that ends: the session after its last
     * @param noticed the session in which a chart first passed its limit for it
     */
    record Cut(int from, int change, int to, int noticed) {
    }

    static List<Cut> of(List<Chart> charts, List<Series> series) {
        Cuts all = new Cuts(series);
        all.merge(charts);
        all.neighbours();
        all.move();
        while (all.dropWeakest()) {
            all.neighbours();
        }
        return all.cuts;
    }

    private void merge(List<Chart> charts) {
        List<Chart.Alarm> alarms = new ArrayList<>();
        charts.forEach(each -> alarms.addAll(each.alarms()));
        alarms.sort(Comparator.comparingInt(Chart.Alarm::change));
        double gain = 0;
        for (Chart.Alarm alarm : alarms) {
            Cut last = cuts.isEmpty() ? null : cuts.get(cuts.size() - 1);
            if (last == null || apart(last.change, alarm.change())) {
                cuts.add(new Cut(0, alarm.change(), 0, alarm.noticed()));
                gain = alarm.gain();
            } else {
                boolean clearer = alarm.gain() > gain;
                cuts.set(cuts.size() - 1, new Cut(0, clearer ? alarm.change() : last.change, 0,
                        Math.min(last.noticed, alarm.noticed())));
                gain = Math.max(gain, alarm.gain());
            }
        }
    }

    private void neighbours() {
        for (int i = 0; i < cuts.size(); i++) {
            int from = i == 0 ? 0 : cuts.get(i - 1).change;
            int to = i + 1 == cuts.size() ? series.get(0).sessions() : cuts.get(i + 1).change;
            cuts.set(i, new Cut(from, cuts.get(i).change, to, Math.max(cuts.get(i).noticed, cuts.get(i).change)));
        }
    }

    private void move() {
        for (int i = 0; i < cuts.size(); i++) {
            Cut cut = cuts.get(i);
            int best = cut.change;
            for (int there = Math.max(cut.from + 1, cut.change - MOVED_MAX);
                    there <= Math.min(cut.to - 1, cut.change + MOVED_MAX); there++) {
                boolean apart = (i == 0 || apart(cut.from, there)) && (i + 1 == cuts.size() || apart(there, cut.to));
                best = apart && gain(cut.from, there, cut.to) > gain(cut.from, best, cut.to) ? there : best;
            }
            cuts.set(i, new Cut(cut.from, best, cut.to, cut.noticed));
            neighbours();
        }
    }

    private boolean apart(int change, int next) {
        return next - change > SAME_SESSIONS && series.get(0).putts(change, next) > SAME_PUTTS;
    }

    private boolean dropWeakest() {
        Cut weakest = cuts.stream().min(Comparator.comparingDouble(this::gain)).orElse(null);
        return weakest != null && gain(weakest) < GAIN_MIN && cuts.remove(weakest);
    }

    private double gain(Cut cut) {
        return gain(cut.from, cut.change, cut.to);
    }

    /** By makes alone, or by direction and pace, which have nothing to do with each other, together. */
    private double gain(int from, int cut, int to) {
        double makes = series.get(0).gain(from, cut, to);
        double measured = series.stream().skip(1).mapToDouble(each -> each.gain(from, cut, to)).sum();
        return Math.max(makes, measured);
    }
}

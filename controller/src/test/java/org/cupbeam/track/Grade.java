package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Compares attempts with the truth, putt by putt. */
final class Grade {
    private final double limitMm;
    private final boolean timedByStrike;
    private final List<Double> errorsMm = new ArrayList<>();
    final List<String> faults = new ArrayList<>();
    int putts;
    int visible;
    int matched;
    int falseAttempts;
    int wrongOutcomes;
    int unreported;
    int wrongOvershoots;
    int intervals;
    int held;

    /**
     * @param limitMm      beyond which a miss overshoots
     * @param timedByStrike the rig has a strike sensor, so an attempt's time is its strike's
     */
    Grade(double limitMm, boolean timedByStrike) {
        this.limitMm = limitMm;
        this.timedByStrike = timedByStrike;
    }

    /** Adds one evening. */
    Grade add(List<TruePutt> truth, List<Attempt> attempts) {
        List<Attempt> sorted = new ArrayList<>(attempts);
        sorted.sort(Comparator.comparingLong(Attempt::timeNs));
        boolean[] used = new boolean[truth.size()];
        for (Attempt attempt : sorted) {
            int index = matchOf(attempt, truth, used);
            if (index < 0) {
                falseAttempts++;
                faults.add("false: " + attempt);
            } else {
                used[index] = true;
                matched++;
                compare(truth.get(index), attempt);
            }
        }
        putts += truth.size();
        for (int i = 0; i < used.length; i++) {
            visible += truth.get(i).visible() ? 1 : 0;
            if (truth.get(i).visible() && !used[i]) {
                unreported++;
                faults.add("unreported: putt " + (i + 1) + " " + truth.get(i));
            }
        }
        return this;
    }

    /**
     * Of the putts that were under way at an attempt's time, the one it must be: struck just then, or else one that the
     * rig could see, and then one that ended alike. An attempt with the wrong outcome still finds no such putt left, or
     * leaves one unreported.
     */
    private int matchOf(Attempt attempt, List<TruePutt> truth, boolean[] used) {
        double t = attempt.timeNs() * 1e-9;
        int best = -1;
        int bestRank = -1;
        for (int i = 0; i < truth.size(); i++) {
            TruePutt putt = truth.get(i);
            if (used[i] || t < putt.struckS() - 0.01 || t > putt.endedS() + 0.2) {
                continue;
            }
            int rank = (timedByStrike && Math.abs(t - putt.struckS()) < 0.01 ? 4 : 0) + (putt.visible() ? 2 : 0)
                    + (putt.holed() == attempt.holed() ? 1 : 0);
            if (rank > bestRank) {
                bestRank = rank;
                best = i;
            }
        }
        return best;
    }

    private void compare(TruePutt putt, Attempt attempt) {
        if (putt.holed() != attempt.holed()) {
            wrongOutcomes++;
            faults.add("outcome: " + putt + " " + attempt);
            return;
        }
        if (putt.holed()) {
            return;
        }
        boolean clear = Math.abs(putt.finishMm() - limitMm) > 25 && !putt.flew();
        if (clear && attempt.overshoots(limitMm) != putt.overshoot()) {
            wrongOvershoots++;
            faults.add("overshoot: " + putt + " " + attempt);
        }
        if (!putt.rim() && !Double.isNaN(attempt.finishMm())) {
            double error = attempt.finishMm() - putt.finishMm();
            errorsMm.add(Math.abs(error));
            intervals++;
            boolean holds = putt.finishMm() >= attempt.betweenLowMm() && putt.finishMm() <= attempt.betweenHighMm();
            held += holds ? 1 : 0;
            if (Math.abs(error) > 5 * attempt.finishSdMm() + 5) {
                faults.add(String.format(Locale.ROOT, "finish off by %.1f (sd %.1f): %s %s", error,
                        attempt.finishSdMm(), putt, attempt));
            }
        } else if (!putt.rim() && Double.isNaN(attempt.finishMm()) && !Double.isNaN(attempt.paceMm())) {
            faults.add("no finish: " + putt + " " + attempt);
        }
    }

    /** Adds what another grade says of intervals. */
    void pool(Grade other) {
        intervals += other.intervals;
        held += other.held;
        errorsMm.addAll(other.errorsMm);
    }

    /** The bars that hold for every rig. */
    void assertNothingWrong() {
        assertThat(falseAttempts).as("false attempts%n%s", this).isZero();
        assertThat(wrongOutcomes).as("wrong outcomes%n%s", this).isZero();
        assertThat((double) unreported / visible).as("visible putts not reported%n%s", this)
                .isLessThanOrEqualTo(0.005);
        assertThat(wrongOvershoots).as("overshoots wrong by more than 25 mm%n%s", this).isZero();
    }

    /** A quantile of the finish errors of misses that touched no rim, mm. */
    double errorMm(double quantile) {
        double[] sorted = errorsMm.stream().mapToDouble(Double::doubleValue).toArray();
        Arrays.sort(sorted);
        return sorted.length == 0 ? Double.NaN : sorted[(int) Math.min(sorted.length - 1, quantile * sorted.length)];
    }

    double coverage() {
        return (double) held / intervals;
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%d putts, %d visible, %d matched; false %d, outcomes wrong %d, unreported %d, "
                        + "overshoots wrong %d; finish error median %.2f p90 %.2f mm of %d; intervals hold %.1f %%",
                putts, visible, matched, falseAttempts, wrongOutcomes, unreported, wrongOvershoots, errorMm(0.5),
                errorMm(0.9), errorsMm.size(), 100 * coverage());
    }
}

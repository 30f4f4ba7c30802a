package org.cupbeam.lane;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.cupbeam.DocTable;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.edge.practice.Truth;
import org.cupbeam.lane.FaultyEvening.Kind;
import org.cupbeam.lane.FaultyEvening.Logged;
import org.cupbeam.lane.FaultyEvening.Said;
import org.cupbeam.rig.Rig;
import org.cupbeam.track.Attempt;

/** One fault of one sensor on one rig, played through some evenings: a row of the table. */
final class FaultRow {
    private static final double NEAR_MM = 25;
    private static final double BESIDE_SDS = 5;
    private static final double BESIDE_MM = 5;
    private static final double THROWN_MM_PER_S = 2000;

    final Kind kind;
    final String sensor;
    final PracticeRigs rigs;
    /** What was told and is not so. */
    final List<String> wrong = new ArrayList<>();
    final Set<String> unknown = new LinkedHashSet<>();
    int said;
    int untold;
    private final Rig rig;
    private int evenings;
    private int visible;
    private int told;
    private double worstS;
    private long worstPutts;
    boolean well = true;
    private String words = "";

    FaultRow(PracticeRigs rigs, Kind kind, String sensor) {
        this.rigs = rigs;
        rig = rigs.level();
        this.kind = kind;
        this.sensor = sensor;
    }

    /** @param begins how what it says begins */
    FaultRow play(long seed, int times, int putts, String begins) {
        for (int i = 0; i < times; i++) {
            FaultyEvening evening = new FaultyEvening(kind, rig, sensor, seed + i, putts);
            evenings++;
            visible += (int) evening.truths.stream().filter(Truth::visible).count();
            told += evening.logged.size();
            untold += evening.untold;
            well &= evening.isWell();
            hear(evening, begins);
            for (Logged each : evening.logged) {
                judge(seed + i, each);
            }
        }
        return this;
    }

    private void hear(FaultyEvening evening, String begins) {
        double fromS = kind.isFromStart() ? 0 : FaultyEvening.FROM_S;
        Said first = begins.isEmpty() ? null : evening.first(begins, fromS);
        if (first != null) {
            said++;
            words = first.words();
            unknown.addAll(first.unknown());
            worstS = Math.max(worstS, first.atNs() * 1e-9 - fromS);
            worstPutts = Math.max(worstPutts, evening.putts(Math.round(fromS * 1e9), first.atNs()));
        }
    }

    private void judge(long seed, Logged logged) {
        String why = logged.of() == null ? "no putt" : why(logged.of(), logged.attempt());
        if (why != null) {
            wrong.add(String.format(Locale.ROOT, "seed %d at %.1f s: %s: %s of %s", seed, logged.attempt().timeNs() * 1e-9, why,
                    logged.attempt(), logged.of()));
        }
    }

    private String why(Truth truth, Attempt attempt) {
        if (truth.holed() != attempt.holed()) {
            return "outcome";
        }
        boolean flew = truth.traits().contains(Truth.Trait.FLEW_OVER)
                || truth.rim() && truth.speedAtHoleMmPerS() > THROWN_MM_PER_S;
        if (truth.holed() || flew) {
            return null;
        }
        double limit = rig.limitMm();
        if (attempt.overshoots(limit) && !truth.overshoot() && Math.abs(truth.finishMm() - limit) > NEAR_MM) {
            return "overshoot";
        }
        double off = truth.finishMm() - attempt.finishMm();
        boolean beside = Double.isNaN(off) ? truth.finishMm() < attempt.betweenLowMm() - BESIDE_MM
                || truth.finishMm() > attempt.betweenHighMm() + BESIDE_MM
                : Math.abs(off) > BESIDE_SDS * attempt.finishSdMm() + BESIDE_MM;
        return beside && !truth.rim() ? "finish" : null;
    }

    /** As the notes have it. */
    String line() {
        return DocTable.row(List.of(kind.name().toLowerCase(Locale.ROOT).replace('_', ' '), sensor,
                rigs.name().toLowerCase(Locale.ROOT), says(), within(), told + " of " + visible, String.valueOf(wrong.size()),
                String.valueOf(untold), kind.endS() < Double.POSITIVE_INFINITY ? well ? "yes" : "no" : ""));
    }

    private String says() {
        int end = words.indexOf(':');
        String shortly = end < 0 ? words : words.substring(0, end);
        return said == 0 ? "nothing" : said < evenings ? "in " + said + " of " + evenings + " evenings: " + shortly : shortly;
    }

    private String within() {
        return said == 0 ? "never" : worstPutts < 2 ? String.format(Locale.ROOT, "%.1f s", worstS)
                : String.format(Locale.ROOT, "%.0f s, %d putts", worstS, worstPutts);
    }

    @Override
    public String toString() {
        return kind + " of " + sensor + " on " + rigs;
    }
}

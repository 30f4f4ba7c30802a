package org.cupbeam.studio.insight.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cupbeam.studio.insight.advice.Advice.Rule;
import org.cupbeam.studio.insight.make.MakeCurve;
import org.cupbeam.studio.insight.make.Stroke;
import org.cupbeam.studio.insight.make.StrokeFit;
import org.cupbeam.studio.insight.make.Tries;
import org.cupbeam.studio.insight.words.Words;

/** What follows from a measured stroke: what each error costs in putts from where the player putts. */
final class StrokeAdvice {
    private static final double LONG_MM = 9000;
    private static final double TENTH_BETTER = 0.9;
    private static final double CLEARLY_MORE = 1.3;
    private static final double LEAST_PER_HUNDRED = 1;
    private static final double AIM_PER_HUNDRED = 2;
    private static final double AIM_STEP_MM = 50;
    private static final double AIM_MOST_MM = 900;
    private static final double AIM_DIFFERS_MM = 100;
    private static final double THREE_PUTTS_MANY = 0.125;
    private static final double MISHIT_MANY = 0.04;

    private final StrokeFit fit;
    private final Stroke stroke;
    private final Findings findings;

    StrokeAdvice(StrokeFit fit, Findings findings) {
        this.fit = fit;
        this.stroke = fit.curve();
        this.findings = findings;
    }

    List<Advice> all() {
        List<Advice> all = new ArrayList<>();
        aim().ifPresent(all::add);
        part().ifPresent(all::add);
        lag().ifPresent(all::add);
        if (stroke.mishitShare() > MISHIT_MANY) {
            all.add(new Advice(Rule.CLEAN_STRIKE, "Practise a clean strike from short range.",
                    Words.ofHundred(stroke.mishitShare(), "putts") + " have quite another length than you mean, of "
                            + Words.count(fit.pace().putts(), "measured putt") + "."));
        }
        return all;
    }

    private Optional<Advice> aim() {
        double now = perHundred(stroke);
        double best = stroke.aimPastMm();
        double most = now;
        for (double aimMm = AIM_STEP_MM; aimMm <= AIM_MOST_MM; aimMm += AIM_STEP_MM) {
            double then = perHundred(with(stroke.directionSdRad(), aimMm, stroke.paceSd()));
            if (then > most) {
                most = then;
                best = aimMm;
            }
        }
        boolean surely = Math.abs(best - stroke.aimPastMm()) > Math.max(AIM_DIFFERS_MM, 2 * fit.pace().aimSdMm());
        if (most - now < AIM_PER_HUNDRED || !surely) {
            return Optional.empty();
        }
        return Optional.of(new Advice(Rule.AIM, "Try to stop the ball " + findings.units().length(best)
                + " past the hole.", "Now your putts are struck to stop " + findings.units().length(stroke.aimPastMm())
                + (stroke.aimPastMm() < 0 ? " short of it" : " past") + "; by your stroke as measured about "
                + Math.round(most - now) + " more in 100 would drop."));
    }

    private Optional<Advice> part() {
        double now = perHundred(stroke);
        double truer = perHundred(with(stroke.directionSdRad() * TENTH_BETTER, stroke.aimPastMm(), stroke.paceSd())) - now;
        double steadier = perHundred(with(stroke.directionSdRad(), stroke.aimPastMm(), stroke.paceSd() * TENTH_BETTER)) - now;
        boolean direction = truer > steadier;
        double more = Math.max(truer, steadier);
        if (more < LEAST_PER_HUNDRED || more < CLEARLY_MORE * Math.min(truer, steadier)) {
            return Optional.empty();
        }
        return Optional.of(new Advice(Rule.STROKE_PART, direction ? "Work on where the ball starts, before pace."
                : "Work on pace, before where the ball starts.", "From where you putt, a tenth less scatter of direction ("
                + Words.decimal(fit.direction().degrees().value(), 1) + " degrees now) is worth "
                + Words.decimal(truer, 1) + " putts in 100, a tenth less of pace (" + Words.decimal(100 * stroke.paceSd(), 0)
                + " % of the length now) " + Words.decimal(steadier, 1) + "."));
    }

    private Optional<Advice> lag() {
        double three = stroke.threePutts(LONG_MM, stroke);
        return three < THREE_PUTTS_MANY ? Optional.empty() : Optional.of(new Advice(Rule.LAG,
                "Practise length from long range, whether it drops or not.", "From " + findings.units().length(LONG_MM)
                + " you would need three putts about " + Math.round(100 * three) + " times in 100, by your direction and pace as "
                + "measured."));
    }

    private Stroke with(double directionRad, double aimMm, double paceSd) {
        return new Stroke(directionRad, aimMm, paceSd, stroke.mishitShare(), stroke.decelerationMmPerS2());
    }

    /** How many in 100 of the player's putts would drop. */
    private double perHundred(MakeCurve curve) {
        double made = 0;
        int putts = 0;
        for (Tries place : findings.places()) {
            made += place.tries() * curve.at(place.distanceMm());
            putts += place.tries();
        }
        return putts == 0 ? 0 : 100 * made / putts;
    }
}

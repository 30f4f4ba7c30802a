package org.cupbeam.studio.web;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.Optional;
import org.cupbeam.studio.coach.Portrait;
import org.cupbeam.studio.insight.Question;
import org.cupbeam.studio.insight.chance.Estimate;
import org.cupbeam.studio.insight.make.Bench;
import org.cupbeam.studio.insight.make.Comparison;
import org.cupbeam.studio.insight.make.OwnPast;
import org.cupbeam.studio.insight.make.Peers;
import org.cupbeam.studio.insight.make.StrokeFit;
import org.cupbeam.studio.insight.make.Tries;
import org.cupbeam.studio.insight.words.Units;
import org.cupbeam.studio.insight.words.Words;

/**
 * The make rate over distance as a page draws and tells it; shares of one.
 *
 * @param company of how many players of this studio the bands are; null where there are too few to tell
 */
record InsightCurve(List<Point> points, List<Tally> tallies, List<Line> benches, Integer company, List<String> said,
                    List<String> sources) {
    private static final int POINTS = 61;
    private static final double NEAREST_MM = 300;
    private static final double LEAST_SPAN_MM = 5_000;
    private static final double MOST_SPAN_MM = 20_000;
    private static final int TALLIES_MAX = 24;
    private static final double THUMB_MM = 12 * Units.MM_PER_FT;
    private static final double[] TOLD_MM = {1_828.8, 3_048};

    /** @param quarter that a quarter of the studio's players stay below; half and threeQuarters likewise; null: not told */
    record Point(double distanceMm, double share, double low, double high, Double quarter, Double half,
                 Double threeQuarters) {
    }

    record Tally(double distanceMm, int putts, int made, double share, double low, double high) {
        static Tally of(Tries tries) {
            Estimate share = tries.proportion().wilson();
            return new Tally(tries.distanceMm(), tries.tries(), tries.made(), share.value(), share.low(), share.high());
        }
    }

    record Line(String name, String source, List<Bench.Rate> rates) {
    }

    static InsightCurve of(Portrait portrait, Question question, DoubleFunction<Optional<Peers>> peers) {
        List<Tries> places = portrait.places().size() > TALLIES_MAX ? Tries.together(portrait.places()) : portrait.places();
        double furthest = places.stream().mapToDouble(Tries::distanceMm).max().orElse(0);
        double span = Math.min(MOST_SPAN_MM, Math.max(LEAST_SPAN_MM, 1.08 * furthest));
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < POINTS; i++) {
            double mm = NEAREST_MM + i * (span - NEAREST_MM) / (POINTS - 1);
            Estimate here = portrait.skill().at(mm);
            Optional<Peers> band = peers.apply(mm);
            points.add(new Point(mm, here.value(), here.low(), here.high(), band.map(Peers::quarter).orElse(null),
                    band.map(Peers::half).orElse(null), band.map(Peers::threeQuarters).orElse(null)));
        }
        return new InsightCurve(points, places.stream().map(Tally::of).toList(),
                question.benches().stream().map(each -> new Line(each.name(), each.source(), each.rates())).toList(),
                peers.apply(NEAREST_MM).map(Peers::players).orElse(null), said(portrait, question, peers), sources(question));
    }

    private static List<String> said(Portrait portrait, Question question, DoubleFunction<Optional<Peers>> peers) {
        List<String> said = new ArrayList<>();
        if (portrait.putts() == 0) {
            return List.of("No putts yet. What is drawn is what is held likely of anybody who comes in.");
        }
        for (double mm : TOLD_MM) {
            said.add(Comparison.inWords(portrait.skill(), question.benches(), mm, question.units()));
        }
        portrait.comparisons().forEach(each -> said.add(each.inWords()));
        peers.apply(TOLD_MM[0]).ifPresent(each ->
                said.add(each.inWords(portrait.skill().curve().at(TOLD_MM[0]), question.units())));
        portrait.past().map(OwnPast::inWords).ifPresent(words ->
                said.add("The last " + Portrait.PAST_DAYS + " days: " + words));
        portrait.stroke().ifPresent(fit -> said.addAll(stroke(portrait, fit, question.units())));
        return said;
    }

    /** Direction and pace, and what it gains to have measured them. */
    private static List<String> stroke(Portrait portrait, StrokeFit fit, Units units) {
        Estimate degrees = fit.direction().degrees();
        Estimate percent = fit.pace().percent();
        double gain = portrait.makes().at(TOLD_MM[0]).width() / portrait.skill().at(TOLD_MM[0]).width();
        List<String> said = new ArrayList<>();
        said.add("Putts start within " + Words.decimal(degrees.value(), 1) + " degrees (" + Words.decimal(degrees.low(), 1)
                + " to " + Words.decimal(degrees.high(), 1) + ") of the line in two cases of three, and roll a length that scatters "
                + "by " + Words.decimal(percent.value(), 0) + " in 100 (" + Words.decimal(percent.low(), 0) + " to "
                + Words.decimal(percent.high(), 0) + "), meant to stop " + units.length(fit.pace().aimPastMm())
                + (fit.pace().aimPastMm() < 0 ? " short of the hole." : " past the hole."));
        if (gain > 1.1) {
            said.add("Measured paces and finishes tell more than makes: from makes alone the band at "
                    + units.length(TOLD_MM[0]) + " would be " + Words.decimal(gain, 1) + " times as wide.");
        }
        return said;
    }

    private static List<String> sources(Question question) {
        List<String> sources = new ArrayList<>();
        question.benches().forEach(each -> sources.add(each.name() + ": " + each.source() + "."));
        Bench.TOUR.at(THUMB_MM).ifPresent(share -> sources.add("A rule of thumb has tour professionals hole one in four from "
                + question.units().length(THUMB_MM) + " (common practice, no source); the published table says about "
                + Words.inHundred(share) + "."));
        return sources;
    }
}

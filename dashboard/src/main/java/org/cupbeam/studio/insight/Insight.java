package org.cupbeam.studio.insight;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cupbeam.studio.insight.advice.Advice;
import org.cupbeam.studio.insight.advice.Adviser;
import org.cupbeam.studio.insight.advice.Findings;
import org.cupbeam.studio.insight.chance.LogOdds;
import org.cupbeam.studio.insight.make.Comparison;
import org.cupbeam.studio.insight.make.CurveFit;
import org.cupbeam.studio.insight.make.MakeCurve;
import org.cupbeam.studio.insight.make.Skill;
import org.cupbeam.studio.insight.make.StrokeFit;
import org.cupbeam.studio.insight.make.Tallies;
import org.cupbeam.studio.insight.make.Tries;
import org.cupbeam.studio.insight.run.Contender;
import org.cupbeam.studio.insight.run.DrillMap;
import org.cupbeam.studio.insight.run.FairTest;
import org.cupbeam.studio.insight.run.Forecast;
import org.cupbeam.studio.insight.shot.Sessions;
import org.cupbeam.studio.insight.shot.Shot;
import org.cupbeam.studio.insight.turn.Series;
import org.cupbeam.studio.insight.turn.SeriesBuilder;
import org.cupbeam.studio.insight.turn.Turns;
import org.cupbeam.studio.insight.weak.Misses;
import org.cupbeam.studio.insight.weak.StrokeByTrait;
import org.cupbeam.studio.insight.weak.Weaknesses;

/**
 * All that a player's putts say.
 *
 * @param sessions    that it rests on
 * @param from        the session from which on the player is as now: the last turn's, else the first
 * @param places      putted from since then, with how many dropped
 * @param makes       the make rate from makes alone, since then
 * @param stroke      direction and pace since then; empty where too few putts were measured
 * @param comparisons with each bench, of the putts since then
 * @param turns       when it turned
 * @param weaknesses  what is weak, over all putts
 * @param misses      what misses have in common, over all putts
 * @param byTrait     direction and pace by what kind of putt it is, over all putts; empty where too few were measured
 * @param forecast    of the drill asked for; empty where it has too many states
 * @param fair        the number of balls that makes it a fair test
 * @param advice      what next
 */
public record Insight(Sessions sessions, int from, List<Tries> places, CurveFit makes, Optional<StrokeFit> stroke,
                      List<Comparison> comparisons, Turns turns, Weaknesses weaknesses, Misses misses,
                      Optional<StrokeByTrait> byTrait, Optional<Forecast> forecast, Optional<FairTest> fair, List<Advice> advice) {
    /** Fewer measured putts than this say nothing of a stroke that makes would not. */
    private static final int MEASURED_MIN = 60;
    /** A stroke stands for the player's make rate once so large a share of the putts was measured. */
    private static final double MEASURED_SHARE = 0.5;
    /** A stretch of fewer putts than this is too short to stand for the player. */
    private static final int NOW_MIN = 200;

    /** Works it all out. The putts in order of time. */
    public static Insight of(List<Shot> shots, Question question) {
        Sessions sessions = Sessions.of(shots);
        Tallies all = Tallies.of(sessions);
        Optional<StrokeFit> overall = stroke(all);
        Weaknesses weaknesses = Weaknesses.of(all);
        Turns turns = turns(sessions, skill(all.makesAlone(), overall).curve(), overall, weaknesses);
        int from = from(sessions, turns);
        Tallies now = from == 0 ? all : Tallies.of(sessions, from);
        CurveFit makes = now.makesAlone();
        Optional<StrokeFit> stroke = from == 0 ? overall : stroke(now);
        Misses misses = Misses.of(sessions, question.drill().limitMm(question.rigLimitMm()));
        Contender contender = contender(makes, stroke, misses);
        Optional<FairTest> fair = FairTest.of(question.drill(), FairTest.STATION, contender, question.rigLimitMm());
        Optional<Forecast> forecast = DrillMap.of(question.drill(), question.rigLimitMm())
                .map(map -> Forecast.of(map, contender, question.rigLimitMm()));
        Optional<StrokeByTrait> byTrait = overall.map(fit -> StrokeByTrait.of(sessions, fit));
        List<Tries> places = now.byPlace();
        List<Advice> advice = Adviser.of(new Findings(sessions, turns, weaknesses, stroke, byTrait,
                Tries.together(places), fair, question.units(), question.zone()));
        return new Insight(sessions, from, places, makes, stroke, comparisons(question, places), turns, weaknesses, misses,
                byTrait, forecast, fair, advice);
    }

    /** The player's make rate as it is now: from the measured stroke where there is enough of that, else from makes. */
    public Skill skill() {
        return skill(makes, stroke);
    }

    /** The player as a drill meets them now. */
    public Contender contender() {
        return contender(makes, stroke, misses);
    }

    private static Skill skill(CurveFit makes, Optional<StrokeFit> stroke) {
        return stroke.filter(fit -> fit.pace().putts() >= MEASURED_SHARE * makes.putts()).map(Skill.class::cast)
                .orElse(makes);
    }

    private static Contender contender(CurveFit makes, Optional<StrokeFit> stroke, Misses misses) {
        Skill skill = skill(makes, stroke);
        return skill instanceof StrokeFit fit ? Contender.of(fit) : Contender.of(skill, misses.pastShare());
    }

    private static Turns turns(Sessions sessions, MakeCurve curve, Optional<StrokeFit> stroke, Weaknesses weaknesses) {
        List<Series> series = new ArrayList<>();
        series.add(SeriesBuilder.makes(sessions, shot ->
                LogOdds.moved(curve.at(shot.distanceMm()), weaknesses.moved(shot.breaks(), shot.lie()))));
        stroke.ifPresent(fit -> {
            series.add(SeriesBuilder.direction(sessions, fit));
            series.add(SeriesBuilder.pace(sessions, fit.pace()));
        });
        return Turns.of(sessions, series);
    }

    /** Where the stretch that stands for the player begins. */
    private static int from(Sessions sessions, Turns turns) {
        for (int i = turns.turns().size() - 1; i >= 0; i--) {
            int session = turns.turns().get(i).session();
            if (sessions.shots().size() - sessions.starts()[session] >= NOW_MIN) {
                return session;
            }
        }
        return 0;
    }

    private static Optional<StrokeFit> stroke(Tallies tallies) {
        StrokeFit fit = tallies.stroke();
        return fit.pace().putts() >= MEASURED_MIN ? Optional.of(fit) : Optional.empty();
    }

    private static List<Comparison> comparisons(Question question, List<Tries> places) {
        return question.benches().stream().flatMap(bench -> Comparison.with(bench, places).stream()).toList();
    }
}

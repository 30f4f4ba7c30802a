package org.cupbeam.studio.coach;

import java.util.List;
import java.util.Optional;
import org.cupbeam.studio.insight.Insight;
import org.cupbeam.studio.insight.Question;
import org.cupbeam.studio.insight.advice.Advice;
import org.cupbeam.studio.insight.make.Comparison;
import org.cupbeam.studio.insight.make.CurveFit;
import org.cupbeam.studio.insight.make.OwnPast;
import org.cupbeam.studio.insight.make.Skill;
import org.cupbeam.studio.insight.make.StrokeFit;
import org.cupbeam.studio.insight.make.Tallies;
import org.cupbeam.studio.insight.make.Tries;
import org.cupbeam.studio.insight.plot.Stops;
import org.cupbeam.studio.insight.plot.Timeline;
import org.cupbeam.studio.insight.run.Contender;
import org.cupbeam.studio.insight.run.FairTest;
import org.cupbeam.studio.insight.run.Forecast;
import org.cupbeam.studio.insight.shot.Sessions;
import org.cupbeam.studio.insight.shot.Shot;
import org.cupbeam.studio.insight.turn.Turns;
import org.cupbeam.studio.insight.weak.Grid;
import org.cupbeam.studio.insight.weak.Misses;
import org.cupbeam.studio.insight.weak.StrokeByTrait;
import org.cupbeam.studio.insight.weak.Weaknesses;

/**
 * What is kept of a player's insight: all that is said and drawn, and none of the putts themselves.
 *
 * @param putts    that it rests on; {@code sessions} likewise
 * @param nowPutts of them, those since the last turn
 * @param fromMs   when the first of these was; 0 without a putt
 * @param past     the last sessions against the ones before; empty where there is too little of either
 */
public record Portrait(int putts, int sessions, int nowPutts, long fromMs, Skill skill, CurveFit makes,
                       Contender contender, Optional<StrokeFit> stroke, List<Tries> places, List<Comparison> comparisons, Optional<OwnPast> past,
                       Turns turns, Weaknesses weaknesses, Misses misses, Optional<StrokeByTrait> byTrait,
                       Optional<Forecast> forecast, Optional<FairTest> fair, List<Advice> advice, Timeline timeline,
                       Stops stops, Grid grid) {
    /** The sessions of so many days are set against those before. */
    public static final int PAST_DAYS = 60;
    private static final long DAY_MS = 86_400_000L;
    /** Fewer putts than this are no rate to be compared with. */
    private static final int PAST_PUTTS_MIN = 200;
    private static final int REST_BYTES = 16_384;
    private static final int SESSION_BYTES = 16;
    private static final int POINT_BYTES = 88;
    private static final int MISS_BYTES = 48;
    private static final int ARRAY_BYTES = 20;

    /** Works it out. The putts in order of time. */
    static Portrait of(List<Shot> shots, Question question) {
        Insight insight = Insight.of(shots, question);
        Sessions sessions = insight.sessions();
        boolean any = sessions.count() > 0;
        int from = any ? sessions.starts()[insight.from()] : 0;
        Skill skill = insight.skill();
        return new Portrait(shots.size(), sessions.count(), shots.size() - from, any ? shots.get(from).atMs() : 0, skill,
                insight.makes(), insight.contender(), insight.stroke(), insight.places(), insight.comparisons(), past(sessions),
                insight.turns(), insight.weaknesses(), insight.misses(), insight.byTrait(), insight.forecast(),
                insight.fair(), insight.advice(),
                Timeline.of(sessions, skill.curve(), insight.weaknesses(), insight.turns()),
                Stops.of(sessions, question.drill().limitMm(question.rigLimitMm())),
                Grid.of(Tallies.of(sessions), skill.curve()));
    }

    /**
     * About how much memory it takes. Nearly all of it is the forecast, a row for each putt that a run may take, and what
     * there is of each session and miss; the rest is much the same for everybody.
     */
    public long bytes() {
        long forecasts = forecast.map(each -> (long) each.chances().length * (ARRAY_BYTES + 8L * (each.stations() + 1))).orElse(0L);
        return REST_BYTES + forecasts + SESSION_BYTES * sessions + (long) POINT_BYTES * timeline.points().size()
                + (long) MISS_BYTES * stops.misses().size();
    }

    private static Optional<OwnPast> past(Sessions sessions) {
        int session = sessions.count();
        while (session > 0 && sessions.atMs(sessions.count() - 1) - sessions.atMs(session - 1) < PAST_DAYS * DAY_MS) {
            session--;
        }
        if (session == 0 || sessions.starts()[session] < PAST_PUTTS_MIN) {
            return Optional.empty();
        }
        List<Shot> before = sessions.shots().subList(0, sessions.starts()[session]);
        return Optional.of(OwnPast.of(Tallies.of(Sessions.of(before)).makesAlone(),
                Tallies.of(sessions, session).byPlace()));
    }
}

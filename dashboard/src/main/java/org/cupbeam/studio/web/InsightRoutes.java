package org.cupbeam.studio.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import org.cupbeam.studio.coach.Coach;
import org.cupbeam.studio.coach.Portrait;
import org.cupbeam.studio.insight.Question;
import org.cupbeam.studio.insight.make.NextPutts;
import org.cupbeam.studio.insight.make.Peers;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.usage.StudioTime;
import org.cupbeam.studio.web.InsightSaid.Finishes;
import org.cupbeam.studio.web.InsightSaid.Next;
import org.cupbeam.studio.web.InsightSaid.Strengths;
import org.cupbeam.studio.web.InsightSaid.Time;
import org.cupbeam.studio.web.LogbookSaid.Player;

/** What the numbers say of a player: the pages, and what they ask for. */
final class InsightRoutes implements Routes {
    /** Of the library that scales and shapes plots; stands in its address, so that a browser may keep it for good. */
    private static final String D3 = "7.9.0";
    private static final int DISTANCE_MAX_MM = 30_000;
    private static final int NEXT_MAX = 200;

    private record Choice(String key, String name, int balls) {
    }

    private record All(String zone, Player player, String drill, int balls, List<Choice> drills, int putts, int sessions,
                       int nowPutts, long fromMs, InsightCurve curve, Time time, Finishes finishes, Strengths strengths,
                       InsightRun run, List<Next> advice) {
    }

    /** @param mean of so many putts, holed on average */
    private record NextSaid(double distanceMm, int putts, double mean, int low, int high, String said) {
        static final double SELDOM = 0.1;
    }

    private final Store store;
    private final Clock clock;
    private final Coach coach;

    /** @param clock gives the time zone where the studio's is not set */
    InsightRoutes(Store store, Clock clock, Coach coach) {
        this.store = store;
        this.clock = clock;
        this.coach = coach;
    }

    @Override
    public void addTo(RoutesConfig routes) {
        routes.get("/insight", Page.of("insight-players.html"));
        routes.get("/insight/{id}", Page.of("insight.html"));
        routes.get("/advice/{id}", Page.of("advice.html"));
        routes.get("/api/insight/{id}", this::all);
        routes.get("/api/insight/{id}/next", this::next);
        routes.get("/lib/d3-" + D3 + ".js", InsightRoutes::library);
    }

    private void all(Context ctx) {
        InsightAsked asked = asked(ctx);
        Portrait portrait = coach.portrait(asked.asked());
        Portrait rival = asked.rival() == null ? null : coach.portrait(asked.rivalAsked());
        Json.send(ctx, new All(asked.question().zone().getId(), Player.of(asked.player()), asked.choice().key(),
                asked.question().drill().balls(), asked.drills().choices().stream().map(each -> new Choice(each.key(),
                        each.drill().name(), each.drill().balls())).toList(),
                portrait.putts(), portrait.sessions(), portrait.nowPutts(), portrait.fromMs(),
                InsightCurve.of(portrait, asked.question(), peers(ctx)), Time.of(portrait, asked.question()),
                Finishes.of(portrait, asked.question()), Strengths.of(portrait, asked.question()),
                InsightRun.of(asked, portrait, rival), portrait.advice().stream().map(Next::of).toList()));
    }

    /** The company is of all studios' players: whoever looks after some of them is told nothing of it. */
    private DoubleFunction<Optional<Peers>> peers(Context ctx) {
        return Access.scope(ctx.req()).isAll() ? coach::peers : mm -> Optional.empty();
    }

    /** How many of the next putts from a distance will drop. */
    private void next(Context ctx) {
        Integer distanceMm = InsightAsked.number(ctx, "distance_mm", 100, DISTANCE_MAX_MM);
        Integer putts = InsightAsked.number(ctx, "putts", 1, NEXT_MAX);
        InsightAsked asked = asked(ctx);
        NextPutts next = NextPutts.of(coach.portrait(asked.asked()).skill(),
                distanceMm == null ? 1_828 : distanceMm, putts == null ? 10 : putts);
        Json.send(ctx, new NextSaid(next.distanceMm(), next.made().tries(), next.made().mean(),
                next.made().quantile(NextSaid.SELDOM), next.made().quantile(1 - NextSaid.SELDOM),
                next.inWords(asked.question().units())));
    }

    /** What a player's page asks first, where its address asks for nothing else. */
    Question usual(int player) {
        return store.read(h -> InsightAsked.usual(h, player, StudioTime.of(h, clock.getZone()).zone()));
    }

    private InsightAsked asked(Context ctx) {
        return store.read(h -> {
            ZoneId zone = StudioTime.of(h, clock.getZone()).zone();
            return InsightAsked.of(h, ctx, zone);
        });
    }

    private static void library(Context ctx) {
        try (InputStream in = InsightRoutes.class.getResourceAsStream(
                "/META-INF/resources/webjars/d3/" + D3 + "/dist/d3.min.js")) {
            ctx.contentType("text/javascript; charset=utf-8").header("Cache-Control", "private, max-age=31536000, immutable")
                    .result(in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException("d3", e);
        }
    }
}

package org.cupbeam.studio.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Clock;
import java.util.List;
import org.cupbeam.event.Answer;
import org.cupbeam.event.BadMessage;
import org.cupbeam.event.Command;
import org.cupbeam.event.CommandJson;
import org.cupbeam.event.Health;
import org.cupbeam.event.Sequence;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.store.LanePutt;
import org.cupbeam.studio.store.RecentPlayers;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.usage.StudioTime;
import org.cupbeam.studio.web.access.Right;

/** Running a lane from a phone: what it is told, and what a page needs to tell it. */
final class ControlRoutes implements Routes {
    private static final int PUTTS_SHOWN = 12;
    private static final int NAMES_SHOWN = 200;

    /** What came of a command. */
    private record Done(String sequence) {
    }

    private record Names(List<String> names) {
    }

    private record Putts(String zone, List<Putt> putts) {
    }

    private record Putt(String sequence, String player, Integer station, Double stationMm, boolean holed, Double finishMm,
                        boolean overshoot, boolean entered, boolean counts, String corrected, String correctedBy,
                        long atMs) {
        static Putt of(LanePutt putt) {
            return new Putt(Sequence.text(putt.sequence()), putt.player(), putt.station(), putt.stationMm(), putt.holed(),
                    putt.finishMm(), putt.overshoot(), putt.entered(), putt.counts(), putt.corrected(),
                    putt.correctedBy(), putt.atMs());
        }
    }

    private final LiveLanes lanes;
    private final Orders orders;
    private final Store store;
    private final Clock clock;

    /** @param clock gives the time zone where the studio's is not set */
    ControlRoutes(LiveLanes lanes, Orders orders, Store store, Clock clock) {
        this.lanes = lanes;
        this.orders = orders;
        this.store = store;
        this.clock = clock;
    }

    @Override
    public void addTo(RoutesConfig routes) {
        routes.get("/control", this::choose);
        routes.get("/control/{studio}/{lane}", Page.of("control.html"));
        routes.post("/api/lanes/{studio}/{lane}/commands", this::command);
        routes.get("/api/lanes/{studio}/{lane}/putts", this::putts);
        routes.get("/api/names", ctx -> Json.send(ctx, new Names(store.read(h -> RecentPlayers.of(h, Access.sight(h, ctx.req()), NAMES_SHOWN)))));
    }

    /** The only lane's page where there is one lane; else the list. */
    private void choose(Context ctx) {
        List<LiveLane> heard = lanes.heard(Access.scope(ctx.req()));
        if (heard.size() == 1) {
            ctx.redirect("/control/" + heard.get(0).topics().studio() + "/" + heard.get(0).topics().lane());
        } else {
            Page.show(ctx, "control-lanes.html");
        }
    }

    /** Takes a command as lanes take it, but for who asks, which is known here. Answered when the lane answers. */
    private void command(Context ctx) {
        ObjectNode asked = Json.read(ctx, ObjectNode.class);
        LiveLane lane = lane(ctx);
        Command command = command(asked, Access.who(ctx.req()));
        Right right = right(command.ask());
        if (!Access.may(ctx.req(), right)) {
            throw Refusal.forbidden("That is for " + right.who() + ".");
        }
        Health health = lane.health();
        if (health != null && health.state() != Health.State.ONLINE) {
            throw Refusal.conflict(health.state() == Health.State.LOST
                    ? "The lane has stopped answering. Nothing was sent." : "The lane is switched off. Nothing was sent.");
        }
        ctx.future(() -> orders.give(lane.topics(), command).thenAccept(answer -> tell(ctx, answer)));
    }

    /** A game may be begun and ended by whoever is at the desk; what is entered in it is the coach's. */
    private static Right right(Command.Ask ask) {
        return ask instanceof Command.Start || ask instanceof Command.End ? Right.PLAY : Right.COACH;
    }

    private static Command command(ObjectNode asked, String who) {
        try {
            return CommandJson.decode(Json.bytes(asked.put("by", who)));
        } catch (BadMessage e) {
            throw Refusal.badRequest("That cannot be asked of a lane: " + e.getMessage() + ".");
        }
    }

    private static void tell(Context ctx, Answer answer) {
        if (!answer.accepted()) {
            String why = answer.reason() == null ? "The lane refused." : answer.reason();
            throw Refusal.conflict(Character.toUpperCase(why.charAt(0)) + why.substring(1) + ".");
        }
        Json.send(ctx, new Done(Sequence.text(answer.sequence())));
    }

    private void putts(Context ctx) {
        LiveLane lane = lane(ctx);
        String journal = lane.health() == null || lane.health().report() == null ? null
                : lane.health().report().journal();
        List<LanePutt> newest = journal == null ? List.of()
                : store.read(h -> LanePutt.newest(h, lane.topics(), journal, PUTTS_SHOWN));
        Json.send(ctx, new Putts(store.read(h -> StudioTime.of(h, clock.getZone()).zone()).getId(), newest.stream().map(Putt::of).toList()));
    }

    private LiveLane lane(Context ctx) {
        String studio = ctx.pathParam("studio");
        String lane = ctx.pathParam("lane");
        if (Topics.isName(studio) && Topics.isName(lane)) {
            return lanes.find(new Topics(studio, lane)).orElseThrow(() ->
                    Refusal.notFound("No lane of that name has been heard."));
        }
        throw Refusal.notFound("No lane has such a name: " + Topics.NAME_RULE + ".");
    }
}

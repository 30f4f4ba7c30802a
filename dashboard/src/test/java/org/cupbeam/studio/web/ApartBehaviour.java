package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.cupbeam.drill.Drill;
import org.cupbeam.event.Event;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.Scenes;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.ingest.Batch;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Keeper;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.web.access.StaffPin;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Two owners on one host: Mila of the studio mill, Quentin of the studio quay. Whatever is of one has that one's mark in its
 * name, and each is asked about everything there is, and the answers searched for the other's mark.
 */
abstract class ApartBehaviour {
    private static final String MILLS = "millmark";
    private static final String QUAYS = "quaymark";
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-11-25T20:00:00Z"), ZoneOffset.UTC);
    /** Only one who plays at both has no mark. */
    private static final String BOTH = "Robin";

    @TempDir
    Path folder;
    private Store store;
    private Keeper keeper;
    private WebServer web;
    private Visit ada;
    private Visit mila;
    private Visit quentin;
    private final ScriptedLane millLane = new ScriptedLane("mill", "lane-1", "jm");
    private final ScriptedLane quayLane = new ScriptedLane("quay", "lane-1", "jq");

    abstract Database database();

    @BeforeEach
    void start() throws Exception {
        StaffPin pin = StaffPin.quick(folder.resolve("staff-pin"));
        pin.set(Staffed.PIN);
        store = Store.open(database());
        keeper = new Keeper(store);
        LiveLanes lanes = new LiveLanes("test");
        lanes.askBroker(() -> true);
        lanes.score(new Topics("mill", "lane-1"), Scenes.duel(false));
        lanes.score(new Topics("quay", "lane-1"), Scenes.duel(false));
        web = new WebServer(store, lanes, pin, CLOCK).start("127.0.0.1", 0);
        ada = new Visit(web.port()).signIn(Staffed.PIN, "Ada");
        Staffed.add(ada, "Ada", "owner", null);
        ada.arrives();
        Staffed.add(ada, "Mila " + MILLS, "owner", List.of("mill"));
        Staffed.add(ada, "Quentin " + QUAYS, "owner", List.of("quay"));
        mila = as("Mila " + MILLS);
        quentin = as("Quentin " + QUAYS);
        evening(millLane, MILLS, mila);
        evening(quayLane, QUAYS, quentin);
    }

    @AfterEach
    void stop() {
        web.close();
        store.close();
    }

    @Test
    void noQuestionIsAnsweredWithAnythingOfTheOthers() throws Exception {
        List<String> wrong = new ArrayList<>();
        int told = 0;
        for (String path : questions()) {
            for (Map.Entry<Visit, String> each : Map.of(mila, QUAYS, quentin, MILLS).entrySet()) {
                HttpResponse<String> answer = each.getKey().get(path);
                String said = answer.body() + answer.headers().map();
                if (answer.statusCode() >= 500 || said.contains(each.getValue()) || said.contains('"' + each.getValue().substring(0, 4) + '"')) {
                    wrong.add(path + " tells the owner without " + each.getValue() + ": " + answer.statusCode() + " " + answer.body());
                }
                told += answer.statusCode() == 200 && said.contains("mark") ? 1 : 0;
            }
        }
        assertThat(wrong).isEmpty();
        assertThat(told).as("answers that tell their own").isGreaterThan(60);
    }

    @Test
    void whoLooksAfterAllIsToldOfBoth() throws Exception {
        for (String path : List.of("/api/players", "/api/runs", "/api/runs/choices", "/api/names", "/api/changes", "/api/drills",
                "/api/record/export?as=json", "/api/runs/export?as=json", "/api/staff")) {
            assertThat(ada.get(path).body()).as(path).contains(MILLS).contains(QUAYS);
        }
        assertThat(ada.get("/api/usage").body()).contains("\"studio\":\"mill\"").contains("\"studio\":\"quay\"");
        assertThat(ada.get("/api/health").body()).contains("mill").contains("quay");
    }

    @Test
    void whatIsTheOthersIsNoMoreThereThanWhatIsNot() throws Exception {
        Map<String, Integer> others = ids(quentin);
        for (String method : List.of("GET", "POST", "PUT", "DELETE")) {
            for (String route : web.addresses(method)) {
                if (route.contains("{id}") && route.startsWith("/api/") && !route.contains("staff")) {
                    int id = others.get(route.contains("run/") ? "run" : route.contains("attempt") ? "attempt"
                            : route.contains("note/{id}") ? "note" : route.contains("drills") ? "drill" : route.contains("league") ? "league" : "player");
                    assertAlike(method, route, "{id}", "" + id, "987654");
                }
                if (route.contains("{studio}") && !route.startsWith("/board")) {
                    assertAlike(method, route, "{studio}", "quay", "nowhere");
                }
            }
        }
        assertThat(ada.get("/api/player/" + others.get("player")).body()).as("it is there").contains(QUAYS);
        assertThat(quentin.get("/api/changes").body()).as("and nothing was changed of it").doesNotContain("Mila");
    }

    private void assertAlike(String method, String route, String hole, String theirs, String nobodys) throws Exception {
        Object body = method.equals("GET") ? null : Map.of();
        HttpResponse<String> one = mila.send(method, filled(route.replace(hole, theirs)), body);
        HttpResponse<String> other = mila.send(method, filled(route.replace(hole, nobodys)), body);

        assertThat(one.statusCode()).as(method + " " + route).isIn(400, 404, 409);
        assertThat(one.statusCode() + one.body()).as(method + " " + route).isEqualTo(other.statusCode() + other.body());
    }

    @Test
    void whatIsNamedInABodyOrAFilterIsNotTheOthersEither() throws Exception {
        Map<String, Integer> own = ids(mila);
        Map<String, Integer> others = ids(quentin);

        assertThat(mila.send("POST", "/api/player/" + own.get("player") + "/merge", Map.of("into", others.get("player"))).body())
                .isEqualTo(mila.send("POST", "/api/player/" + own.get("player") + "/merge", Map.of("into", 987_654)).body());
        assertThat(mila.send("POST", "/api/run/" + own.get("run") + "/reassign", Map.of("player", "Nadia " + QUAYS)).statusCode()).isEqualTo(409);
        assertThat(mila.get("/api/insight/" + own.get("player") + "?against=" + others.get("player")).statusCode()).isEqualTo(404);
        assertThat(Visit.json(mila.get("/api/runs?player=" + others.get("player"))).get("rows")).isEmpty();
        int lane = Visit.json(ada.get("/api/runs/choices")).get("lanes").get(1).get("id").asInt();
        assertThat(Visit.json(ada.get("/api/runs?lane=" + lane)).get("rows")).isNotEmpty();
        assertThat(Visit.json(mila.get("/api/runs?lane=" + lane)).get("rows")).isEmpty();
        assertThat(mila.get("/api/runs?drill=Drill%20" + QUAYS).body()).doesNotContain(QUAYS);
    }

    @Test
    void ofAPlayerWhoIsAtBothEachSeesTheirOwnPart() throws Exception {
        int robin = Visit.json(mila.get("/api/players?name=" + BOTH)).at("/rows/0/id").asInt();
        JsonNode whole = Visit.json(ada.get("/api/player/" + robin)).get("player");
        assertThat(ada.send("PUT", "/api/player/" + robin, Map.of("name", BOTH, "remark", "said by Ada", "hand", "left")).statusCode()).isEqualTo(200);
        assertThat(quentin.send("POST", "/api/player/" + robin + "/notes", Map.of("words", "a word of " + QUAYS)).statusCode()).isEqualTo(200);

        JsonNode seen = Visit.json(mila.get("/api/player/" + robin));
        assertThat(whole.get("runs").asInt()).isEqualTo(2);
        assertThat(seen.get("player").get("runs").asInt()).isEqualTo(1);
        assertThat(seen.get("player").get("remark").isNull()).isTrue();
        assertThat(seen.get("player").get("hand").isNull()).isTrue();
        assertThat(seen.toString()).doesNotContain(QUAYS);
        assertThat(quentin.get("/api/player/" + robin).body()).contains("a word of " + QUAYS);
        assertThat(Visit.json(mila.get("/api/insight/" + robin)).get("putts").asInt()).isEqualTo(1);
        assertThat(Visit.json(ada.get("/api/insight/" + robin)).get("putts").asInt()).isEqualTo(2);
        for (HttpResponse<String> each : List.of(mila.send("PUT", "/api/player/" + robin, Map.of("name", "Robyn")),
                mila.send("DELETE", "/api/player/" + robin, null),
                mila.send("POST", "/api/player/" + robin + "/merge", Map.of("into", ids(mila).get("player"))))) {
            assertThat(each.statusCode()).as(each.body()).isEqualTo(409);
            assertThat(each.body()).contains("elsewhere on this host");
        }
    }

    @Test
    void aPlayerWhoIsAddedIsSeenWhereTheyWereAdded() throws Exception {
        int added = Visit.json(mila.send("POST", "/api/players", Map.of("name", "New " + MILLS, "remark", "left early"))).get("id").asInt();

        assertThat(mila.get("/api/players?name=New").body()).contains("New " + MILLS).contains("left early");
        assertThat(mila.get("/api/names").body()).contains("New " + MILLS);
        assertThat(quentin.get("/api/player/" + added).statusCode()).isEqualTo(404);
        assertThat(mila.send("POST", "/api/players", Map.of("name", "new " + MILLS)).statusCode()).as("known here").isEqualTo(400);
        JsonNode same = Visit.json(quentin.send("POST", "/api/players", Map.of("name", "new " + MILLS, "remark", "x")));
        assertThat(same.get("id").asInt()).as("one name is one player").isEqualTo(added);
        assertThat(quentin.get("/api/player/" + added).body()).doesNotContain("left early");
    }

    /** Lanes may still say it, and what they say of it is the other's player's. */
    @Test
    void anOldNameOfTheOthersPlayerIsNotTakenFromThem() throws Exception {
        int own = Visit.json(mila.send("POST", "/api/players", Map.of("name", "Another " + MILLS))).get("id").asInt();

        HttpResponse<String> refused = mila.send("PUT", "/api/player/" + own, Map.of("name", "Before " + QUAYS));
        assertThat(refused.statusCode()).as(refused.body()).isEqualTo(400);
        assertThat(refused.body()).contains("add something to the name");
        done(mila, "PUT", "/api/player/" + own, Map.of("name", "Before " + MILLS));
        done(ada, "PUT", "/api/player/" + own, Map.of("name", "Before " + QUAYS));
    }

    @Test
    void aDrillOfOneIsOnTheOthersShelfUnderTheSameNameOnlyByTheOther() throws Exception {
        assertThat(Visit.json(mila.get("/api/drills")).get("own")).hasSize(1);
        assertThat(quentin.send("POST", "/api/drills", Map.of("drill", drill("Drill " + MILLS))).statusCode()).isEqualTo(200);
        assertThat(mila.send("POST", "/api/drills", Map.of("drill", drill("Drill " + MILLS))).statusCode()).as("there is one").isEqualTo(409);
        int common = Visit.json(ada.send("POST", "/api/drills", Map.of("drill", drill("For all")))).get("id").asInt();

        assertThat(mila.get("/api/drills").body()).contains("For all");
        assertThat(mila.send("PUT", "/api/drills/" + common, Map.of("drill", drill("Mine"), "version", 1)).body()).contains("is for all studios");
        assertThat(mila.send("DELETE", "/api/drills/" + common, Map.of("version", 1)).body()).contains("is for all studios");
    }

    @Test
    void aLeagueIsSeenByWhoeverLooksAfterAllItsStudios() throws Exception {
        for (List<String> studios : List.of(List.<String>of(), List.of("quay"), List.of("mill", "quay"))) {
            assertThat(mila.send("POST", "/api/leagues", league("Mine", studios)).statusCode()).as("%s", studios).isEqualTo(400);
        }
        done(ada, "POST", "/api/leagues", league("Over both", List.of("mill", "quay")));
        done(ada, "POST", "/api/leagues", league("Over all", List.of()));

        assertThat(mila.get("/api/leagues").body()).contains("League " + MILLS).doesNotContain("Over both", "Over all", QUAYS);
        assertThat(ada.get("/api/leagues").body()).contains(MILLS, QUAYS, "Over both", "Over all");
        assertThat(mila.get("/api/leagues/choices").body()).contains("mill").doesNotContain("quay", QUAYS);
        int others = ids(quentin).get("league");
        assertThat(quentin.send("DELETE", "/api/league/" + others, null).statusCode()).isEqualTo(204);
        assertThat(mila.send("POST", "/api/league/" + others + "/put-back", null).statusCode()).isEqualTo(409);
        assertThat(quentin.get("/api/leagues").body()).doesNotContain("League");
        assertThat(quentin.send("POST", "/api/league/" + others + "/put-back", null).statusCode()).isEqualTo(200);
    }

    @Test
    void theListOfLanesIsOnesOwnOnceSignedIn() throws Exception {
        assertThat(lanesTold(mila)).contains("mill").doesNotContain("quay");
        assertThat(lanesTold(quentin)).contains("quay").doesNotContain("mill");
        assertThat(lanesTold(new Visit(web.port()))).as("anybody").contains("mill").contains("quay");
        assertThat(mila.get("/control").headers().firstValue("Location")).contains("/control/mill/lane-1");
    }

    private String lanesTold(Visit visit) throws Exception {
        return visit.firstOf("/live/lanes", "event: lanes");
    }

    /** All addresses, with everything that is there in their holes, and with what lists may be asked by. */
    private List<String> questions() throws Exception {
        List<String> all = new ArrayList<>(List.of("/api/players?by=name", "/api/players?name=n", "/api/players?name=mark", "/api/runs?limit=200",
                "/api/runs/choices?name=mark", "/api/usage?month=2026-11", "/api/runs?breaks=left-to-right", "/api/usage/export?as=json",
                "/api/record/export?as=json", "/api/runs/export?as=json", "/api/players/export?as=csv", "/api/runs?player=1&lane=1",
                "/api/green/mill/lane-1/export?as=json", "/api/green/quay/lane-1/export?as=json"));
        for (String sheet : List.of("players", "runs", "attempts", "notes", "changes")) {
            all.add("/api/record/export?as=csv&sheet=" + sheet);
        }
        for (String route : web.addresses("GET")) {
            if (!route.startsWith("/board") && !route.equals("/api/session") && !route.equals("/lanes")) {
                for (String studio : List.of("mill", "quay")) {
                    for (int id = 1; id <= (route.contains("{id}") ? 12 : 1); id++) {
                        all.add(filled(route.replace("{studio}", studio).replace("{id}", "" + id)) + (route.endsWith("export") ? "?as=json" : ""));
                    }
                }
            }
        }
        return all.stream().distinct().toList();
    }

    private static String filled(String route) {
        return route.replace("{studio}", "mill").replace("{lane}", "lane-1").replace("{key}", "ladder").replace("{id}", "1");
    }

    private static Map<String, Integer> ids(Visit visit) throws Exception {
        Map<String, Integer> ids = new TreeMap<>();
        ids.put("player", Visit.json(visit.get("/api/players?name=Nadia")).at("/rows/0/id").asInt());
        int run = Visit.json(visit.get("/api/runs?player=" + ids.get("player"))).at("/rows/0/id").asInt();
        JsonNode story = Visit.json(visit.get("/api/run/" + run));
        ids.put("run", run);
        ids.put("attempt", story.at("/putts/0/id").asInt());
        ids.put("note", story.at("/notes/0/id").asInt());
        ids.put("league", Visit.json(visit.get("/api/leagues")).at("/leagues/0/id").asInt());
        ids.put("drill", Visit.json(visit.get("/api/drills")).at("/own/0/id").asInt());
        assertThat(ids.values()).allMatch(each -> each > 0);
        return ids;
    }

    private void evening(ScriptedLane lane, String mark, Visit owner) throws Exception {
        String nadia = "Nadia " + mark;
        lane.plays(new Drill("Drill " + mark, ScriptedLane.LADDER.stations(), 6, ScriptedLane.LADDER.supply(), 1,
                ScriptedLane.LADDER.limitMm(), ScriptedLane.LADDER.penalty(), ScriptedLane.LADDER.turns()));
        keep(lane.starts("r1", "d1", nadia, 1), lane.starts("r2", "d1", BOTH, 2), lane.passes(10).holes("r1", "d1", nadia, 1),
                lane.passes(10).misses("r1", "d1", nadia, 2, 417), lane.passes(10).holes("r2", "d1", BOTH, 1),
                lane.voids(4, "Coach " + mark, "because " + mark), lane.puttsOutsideAnyRun(),
                lane.ends("r1", "d1", nadia, 1, 2, 1, 417), lane.ends("r2", "d1", BOTH, 1, 1, 1, Double.NaN), lane.endsDuel("d1", nadia));
        int player = Visit.json(owner.get("/api/players?name=Nadia")).at("/rows/0/id").asInt();
        int run = Visit.json(owner.get("/api/runs?player=" + player)).at("/rows/0/id").asInt();
        int attempt = Visit.json(owner.get("/api/run/" + run)).at("/putts/0/id").asInt();
        done(owner, "PUT", "/api/player/" + player, Map.of("name", nadia, "remark", "remark " + mark, "hand", "left"));
        done(owner, "POST", "/api/player/" + player + "/notes", Map.of("words", "of a player " + mark));
        done(owner, "POST", "/api/run/" + run + "/notes", Map.of("words", "of a run " + mark));
        done(owner, "POST", "/api/attempt/" + attempt + "/notes", Map.of("words", "of a putt " + mark));
        done(owner, "POST", "/api/attempt/" + attempt + "/void", Map.of("reason", "void " + mark));
        done(owner, "POST", "/api/attempt/" + attempt + "/restore", Map.of("reason", "restored " + mark));
        done(owner, "PUT", "/api/green/" + lane.source.studio() + "/lane-1/range", Map.of("low_ft", 9, "high_ft", 11));
        done(owner, "POST", "/api/drills", Map.of("drill", drill("Drill " + mark)));
        done(owner, "POST", "/api/leagues", league("League " + mark, List.of(lane.source.studio())));
        int renamed = Visit.json(owner.send("POST", "/api/players", Map.of("name", "Before " + mark))).get("id").asInt();
        done(owner, "PUT", "/api/player/" + renamed, Map.of("name", "After " + mark));
        done(owner, "POST", "/api/player/" + renamed + "/merge", Map.of("into", player));
    }

    private static void done(Visit visit, String method, String path, Object body) throws Exception {
        HttpResponse<String> answer = visit.send(method, path, body);
        assertThat(answer.statusCode()).as(method + " " + path + ": " + answer.body()).isEqualTo(200);
    }

    private static Map<String, Object> league(String name, List<String> studios) {
        return Map.of("name", name, "drill", drill("Drill of a league"), "first", "2026-11-23", "last", "2026-11-29", "studios", studios);
    }

    private static Map<String, Object> drill(String name) {
        return Map.of("name", name, "stations", Map.of("first_mm", 1000, "step_mm", 500, "count", 6),
                "balls", Map.of("count", 3, "supply", "every-station"), "advance", Map.of("holed", 1),
                "overshoot", Map.of("penalty", "none"), "duel", Map.of("turns", "station"));
    }

    private void keep(Event... events) {
        List<Arrival> arrivals = Arrays.stream(events).map(each -> new Arrival(each.source(), each.sequence(), each.time(), each, null,
                ScriptedLane.json(each), CLOCK.instant())).toList();
        keeper.commit(new Batch(arrivals, List.of(), List.of()));
    }

    private Visit as(String name) throws Exception {
        return new Visit(web.port()).signInAs(name, Staffed.secret(name));
    }
}

package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.cupbeam.event.Event;
import org.cupbeam.event.HealthJson;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.web.Staffed;
import org.cupbeam.studio.web.Visit;
import org.cupbeam.studio.web.access.StaffPin;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** One host, two studios whose lanes send by a broker at the same time, and two owners who ask meanwhile. */
@Timeout(120)
class OwnersApartIT {
    private static final int RUNS = 40;

    @TempDir
    private Path folder;

    @Test
    void eachSeesTheirStudioAloneWhileBothPlay() throws Exception {
        Assumptions.assumeTrue(Boolean.getBoolean("cupbeam.nightly"), "takes some 10 s: in the nightly profile");
        StaffPin pin = StaffPin.quick(folder.resolve("staff-pin"));
        pin.set(Staffed.PIN);
        try (EmbeddedBroker broker = new EmbeddedBroker(0);
             Host host = Host.start(Database.file(folder.resolve("studio.db")), broker.uri(), "host", new Door("127.0.0.1", 0, pin));
             Wire wire = new Wire(broker.uri()).hear("cupbeam/mill/one/stored").hear("cupbeam/quay/one/stored")) {
            Visit ada = new Visit(host.port()).signIn(Staffed.PIN, "Ada");
            Staffed.add(ada, "Ada", "owner", null);
            ada.arrives();
            Staffed.add(ada, "Mila", "owner", List.of("mill"));
            Staffed.add(ada, "Quentin", "owner", List.of("quay"));
            Visit mila = new Visit(host.port()).signInAs("Mila", Staffed.secret("Mila"));
            Visit quentin = new Visit(host.port()).signInAs("Quentin", Staffed.secret("Quentin"));
            ScriptedLane mill = new ScriptedLane("mill", "one", "jm");
            ScriptedLane quay = new ScriptedLane("quay", "one", "jq");
            for (int i = 0; i < RUNS; i++) {
                plays(wire, mill, i, "millmark");
                plays(wire, quay, i, "quaymark");
                apart(mila, "millmark", "quaymark");
                apart(quentin, "quaymark", "millmark");
            }

            awaitRuns(ada, 2 * RUNS);
            assertThat(runs(mila)).isEqualTo(RUNS);
            assertThat(runs(quentin)).isEqualTo(RUNS);
            assertThat(Visit.json(quentin.get("/api/health"))).extracting(each -> each.get("studio").asText()).containsExactly("quay");
            takenAwayIsOut(ada, quentin);
        }
    }

    private static void plays(Wire wire, ScriptedLane lane, int run, String mark) throws Exception {
        String id = "r" + run;
        String player = "Player " + run + " " + mark;
        for (Event each : List.of(lane.starts(id, null, player, 1), lane.passes(5).holes(id, null, player, 1),
                lane.passes(5).misses(id, null, player, 2, 417), lane.ends(id, null, player, 1, 2, 1, 417))) {
            wire.say(lane.topic(), ScriptedLane.json(each), false);
        }
        wire.say("cupbeam/" + lane.source.studio() + "/one/health", HealthJson.encode(Scenes.online(1, lane.source.journal())), true);
    }

    private static void apart(Visit owner, String own, String others) throws Exception {
        for (String path : List.of("/api/players", "/api/runs?limit=200", "/api/runs/choices", "/api/names", "/api/record/export?as=json")) {
            HttpResponse<String> answer = owner.get(path);
            assertThat(answer.statusCode()).as(path).isEqualTo(200);
            assertThat(answer.body()).as("%s of %s", path, own).doesNotContain(others);
        }
    }

    private static void takenAwayIsOut(Visit ada, Visit quentin) throws Exception {
        for (JsonNode each : Visit.json(ada.get("/api/staff")).get("people")) {
            if (each.get("name").asText().equals("Quentin")) {
                assertThat(ada.send("DELETE", "/api/staff/" + each.get("id"), null).statusCode()).isEqualTo(204);
            }
        }
        assertThat(quentin.get("/api/players").statusCode()).isEqualTo(401);
        assertThat(new Visit(quentin.port()).send("POST", "/api/session", Map.of("name", "Quentin", "secret",
                Staffed.secret("Quentin"))).statusCode()).isEqualTo(403);
    }

    private static int runs(Visit visit) throws Exception {
        return Visit.json(visit.get("/api/runs?limit=200")).get("rows").size();
    }

    private static void awaitRuns(Visit visit, int runs) throws Exception {
        for (int tries = 0; tries < 100 && runs(visit) < runs; tries++) {
            Thread.sleep(200);
        }
        assertThat(runs(visit)).isEqualTo(runs);
    }
}

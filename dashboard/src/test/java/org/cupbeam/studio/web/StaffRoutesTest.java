package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Signing in by name, and saying who does. */
class StaffRoutesTest {
    @TempDir
    private Path folder;
    private Staffed host;

    @AfterEach
    void stop() {
        host.close();
    }

    @Test
    void oneStudioWithOnePinIsAsSimpleAsEver() throws Exception {
        host = Staffed.byPin(folder);
        Visit staff = host.visit().signIn(Staffed.PIN, "Kim");
        JsonNode standing = Visit.json(staff.get("/api/session"));

        assertThat(standing.get("by_name").asBoolean()).isFalse();
        assertThat(standing.get("role").asText()).isEqualTo("owner");
        assertThat(standing.get("studios").isNull()).as("all").isTrue();
        assertThat(Visit.json(staff.get("/api/staff")).get("people")).isEmpty();
    }

    @Test
    void theFirstHasToBeAnOwnerOfAllWithAPinBehindThem() throws Exception {
        host = Staffed.byPin(folder);
        host.pin.forget();
        Visit here = host.visit().arrives();
        HttpResponse<String> noPin = here.send("POST", "/api/staff", given("Ada", "owner", null));
        assertThat(noPin.statusCode()).isEqualTo(409);
        assertThat(noPin.body()).contains("Set a staff PIN first");
        host.pin.set(Staffed.PIN);
        Visit staff = host.visit().signIn(Staffed.PIN, "Kim");

        for (Map<String, Object> wrong : List.of(given("Ada", "coach", null), given("Ada", "owner", List.of("mill")))) {
            assertThat(staff.send("POST", "/api/staff", wrong).body()).contains("has to be an owner of all studios");
        }
    }

    @Test
    void whoMadeTheFirstGoesOnAsThatOneAndThePinOpensNoMore() throws Exception {
        host = Staffed.byPin(folder);
        Visit maker = host.visit().signIn(Staffed.PIN, "Kim");
        Visit other = host.visit().signIn(Staffed.PIN, "Lou");
        Staffed.add(maker, "Ada", "owner", null);

        assertThat(Visit.json(maker.get("/api/session")).get("who").asText()).isEqualTo("Ada");
        assertThat(other.get("/api/players").statusCode()).isEqualTo(401);
        assertThat(host.visit().send("POST", "/api/session", Map.of("pin", Staffed.PIN, "who", "Kim")).statusCode()).isEqualTo(400);
        assertThat(Visit.json(host.visit().get("/api/session")).get("by_name").asBoolean()).isTrue();
    }

    @Test
    void aWrongSecretAndAWrongNameAreToldAlikeAndCounted() throws Exception {
        host = Staffed.byName(folder);
        String wrong = refusal(Map.of("name", "Ada", "secret", "nothing-like-it"), 403);

        assertThat(refusal(Map.of("name", "Nobody", "secret", Staffed.secret("Nobody")), 403)).isEqualTo(wrong);
        assertThat(refusal(Map.of("name", "Ada", "secret", Staffed.secret("Olga")), 403)).isEqualTo(wrong);
        assertThat(refusal(Map.of("name", "Ada"), 400)).contains("name and secret");
        HttpResponse<String> last = null;
        for (int i = 0; i < 30; i++) {
            last = host.visit().send("POST", "/api/session", Map.of("name", "Ada", "secret", "nothing-like-it"));
        }
        assertThat(last.statusCode()).isEqualTo(429);
    }

    @Test
    void aNameIsTheSameInWhateverCase() throws Exception {
        host = Staffed.byName(folder);

        assertThat(Visit.json(host.visit().signInAs("  olga ", Staffed.secret("Olga")).get("/api/session")).get("who").asText())
                .isEqualTo("Olga");
    }

    @Test
    void whoIsTakenAwayIsOutAtOnceAndPutBackMaySignInAgain() throws Exception {
        host = Staffed.byName(folder);
        Visit ada = host.as("Ada");
        Visit carl = host.as("Carl");
        int number = number(ada, "Carl");
        assertThat(ada.send("DELETE", "/api/staff/" + number, null).statusCode()).isEqualTo(204);

        assertThat(carl.get("/api/players").statusCode()).isEqualTo(401);
        assertThat(refusal(Map.of("name", "Carl", "secret", Staffed.secret("Carl")), 403)).contains("belong together");
        assertThat(ada.send("POST", "/api/staff/" + number + "/put-back", null).statusCode()).isEqualTo(200);
        assertThat(carl.get("/api/players").statusCode()).as("the old session is as good as before").isEqualTo(401);
        assertThat(host.as("Carl").get("/api/players").statusCode()).isEqualTo(200);
    }

    @Test
    void anotherRoleOtherStudiosOrAnotherSecretEndTheSessions() throws Exception {
        host = Staffed.byName(folder);
        Visit ada = host.as("Ada");
        int number = number(ada, "Carl");
        for (Map<String, Object> change : List.of(what("desk", List.of("mill")), what("desk", List.of("mill", "quay")), what("coach", null))) {
            Visit carl = host.as("Carl");
            assertThat(carl.get("/api/players").statusCode()).isEqualTo(200);
            assertThat(ada.send("PUT", "/api/staff/" + number, change).statusCode()).isEqualTo(200);
            assertThat(carl.get("/api/players").statusCode()).as("%s", change).isEqualTo(401);
        }
        Visit carl = host.as("Carl");
        assertThat(ada.send("PUT", "/api/staff/" + number + "/secret", Map.of("secret", "another-774411")).statusCode()).isEqualTo(200);
        assertThat(carl.get("/api/players").statusCode()).isEqualTo(401);
        assertThat(host.visit().signInAs("Carl", "another-774411").get("/api/players").statusCode()).isEqualTo(200);
    }

    @Test
    void everybodyChangesTheirOwnSecretKnowingTheOneOfNow() throws Exception {
        host = Staffed.byName(folder);
        Visit dora = host.as("Dora");
        Visit elsewhere = host.as("Dora");

        assertThat(dora.send("PUT", "/api/session/secret", Map.of("now", "wrong-one-1", "next", "fresh-912837")).statusCode()).isEqualTo(403);
        assertThat(dora.send("PUT", "/api/session/secret", Map.of("now", Staffed.secret("Dora"), "next", "1234567")).statusCode()).isEqualTo(400);
        assertThat(dora.send("PUT", "/api/session/secret", Map.of("now", Staffed.secret("Dora"), "next", "fresh-912837")).statusCode()).isEqualTo(200);
        assertThat(dora.get("/api/players").statusCode()).isEqualTo(200);
        assertThat(elsewhere.get("/api/players").statusCode()).isEqualTo(401);
        assertThat(host.visit().signInAs("Dora", "fresh-912837").get("/api/players").statusCode()).isEqualTo(200);
    }

    @Test
    void thereIsAlwaysAnOwnerOfAllAndTheLastOneOfAllMayGo() throws Exception {
        host = Staffed.byName(folder);
        Visit ada = host.as("Ada");
        int second = Staffed.add(ada, "Bea", "owner", null);
        Visit bea = host.as("Bea");
        int first = number(ada, "Ada");

        assertThat(ada.send("DELETE", "/api/staff/" + first, null).statusCode()).as("not oneself").isEqualTo(409);
        assertThat(bea.send("PUT", "/api/staff/" + first, what("coach", null)).statusCode()).isEqualTo(200);
        assertThat(host.as("Ada").send("PUT", "/api/staff/" + second, what("coach", null)).statusCode()).as("a coach now").isEqualTo(403);
        for (String each : List.of("Ada", "Olga", "Carl", "Dora")) {
            assertThat(bea.send("DELETE", "/api/staff/" + number(bea, each), null).statusCode()).isEqualTo(204);
        }
        assertThat(bea.send("DELETE", "/api/staff/" + second, null).statusCode()).isEqualTo(204);
        assertThat(bea.get("/api/players").statusCode()).isEqualTo(401);
        assertThat(host.visit().signIn(Staffed.PIN, "Kim").get("/api/players").statusCode()).isEqualTo(200);
    }

    @Test
    void anOwnerOfSomeStudiosKnowsOnlyTheirPeopleAndGivesNoneButTheirStudios() throws Exception {
        host = Staffed.byName(folder);
        Visit ada = host.as("Ada");
        int elsewhere = Staffed.add(ada, "Quentin", "coach", List.of("quay"));
        int both = Staffed.add(ada, "Beatrix", "coach", List.of("mill", "quay"));
        Visit olga = host.as("Olga");

        String seen = olga.get("/api/staff").body();
        assertThat(seen).contains("Olga", "Carl", "Dora", "mill").doesNotContain("\"name\":\"Ada\"", "Quentin", "Beatrix", "quay");
        for (int other : List.of(number(ada, "Ada"), elsewhere, both, 999)) {
            assertThat(olga.send("DELETE", "/api/staff/" + other, null).body()).contains("There is nobody of that number.");
            assertThat(olga.send("PUT", "/api/staff/" + other, what("desk", List.of("mill"))).statusCode()).isEqualTo(404);
            assertThat(olga.send("PUT", "/api/staff/" + other + "/secret", Map.of("secret", "mine-7744112")).statusCode()).isEqualTo(404);
            assertThat(olga.send("POST", "/api/staff/" + other + "/put-back", null).statusCode()).isEqualTo(404);
        }
        for (Map<String, Object> wrong : List.of(given("Eve", "desk", null), given("Eve", "desk", List.of("quay")),
                given("Eve", "desk", List.of("mill", "quay")), given("Eve", "desk", List.of()), given("Eve", "desk", List.of("'); --")))) {
            assertThat(olga.send("POST", "/api/staff", wrong).statusCode()).as("%s", wrong).isEqualTo(400);
        }
        assertThat(olga.send("POST", "/api/staff", given("Eve", "desk", List.of("mill"))).statusCode()).isEqualTo(200);
    }

    @Test
    void pagesOfOtherSitesAndPagesFromBeforeChangeNothing() throws Exception {
        host = Staffed.byName(folder);
        Visit ada = host.as("Ada");
        String before = ada.get("/api/staff").body().replaceAll("\"seen_ago_s\":\\d+", "");

        assertThat(ada.send(ada.request("/api/staff").header("Content-Type", "application/json").header("X-Cupbeam-Token", ada.token())
                .header("Origin", "https://elsewhere.example").POST(BodyPublishers.ofString("{}"))).statusCode())
                .isEqualTo(403);
        String token = ada.token();
        for (String method : List.of("POST", "PUT", "DELETE")) {
            String path = method.equals("POST") ? "/api/staff" : "/api/staff/1";
            assertThat(ada.withToken(null).send(method, path, Map.of()).statusCode()).isEqualTo(412);
            assertThat(ada.withToken("x").send(method, path, Map.of()).statusCode()).isEqualTo(412);
        }
        assertThat(ada.withToken(token).get("/api/staff").body().replaceAll("\"seen_ago_s\":\\d+", "")).isEqualTo(before);
    }

    @Test
    void noAnswerHasASecretOrItsHash() throws Exception {
        host = Staffed.byName(folder);
        Visit ada = host.as("Ada");

        for (String path : List.of("/api/staff", "/api/session", "/api/record/export?as=json", "/api/changes")) {
            assertThat(ada.get(path).body()).as(path).doesNotContain("pbkdf2", "48151623");
        }
    }

    @Test
    void whatIsChangedStandsWithTheNameThatWasProved() throws Exception {
        host = Staffed.byName(folder);
        Visit carl = host.as("Carl");
        int player = Visit.json(carl.send("POST", "/api/players", Map.of("name", "Nadia"))).get("id").asInt();
        carl.send("PUT", "/api/player/" + player, Map.of("name", "Nadja"));

        assertThat(host.as("Ada").get("/api/changes").body()).contains("\"by\":\"Carl\"");
    }

    private String refusal(Map<String, Object> body, int status) throws Exception {
        HttpResponse<String> answer = host.visit().send("POST", "/api/session", body);
        assertThat(answer.statusCode()).isEqualTo(status);
        assertThat(answer.headers().firstValue("Set-Cookie")).isEmpty();
        return answer.body();
    }

    private static int number(Visit owner, String name) throws Exception {
        for (JsonNode each : Visit.json(owner.get("/api/staff")).get("people")) {
            if (each.get("name").asText().equals(name)) {
                return each.get("id").asInt();
            }
        }
        throw new AssertionError("nobody is called " + name);
    }

    private static Map<String, Object> what(String role, List<String> studiosOrNull) {
        Map<String, Object> what = new HashMap<>(Map.of("role", role));
        what.put("studios", studiosOrNull);
        return what;
    }

    private static Map<String, Object> given(String name, String role, List<String> studiosOrNull) {
        Map<String, Object> given = what(role, studiosOrNull);
        given.putAll(Map.of("name", name, "secret", Staffed.secret(name)));
        return given;
    }
}

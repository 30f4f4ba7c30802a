package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.regex.Pattern;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.web.access.StaffPin;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Who gets in, over HTTP. */
class AccessTest {
    private static final String PIN = "739205";

    @TempDir
    private Path folder;
    private StaffPin pin;
    private Store store;
    private WebServer web;
    private Visit visit;

    @BeforeEach
    void start() throws Exception {
        pin = StaffPin.quick(folder.resolve("staff-pin"));
        store = Store.open(Database.file(folder.resolve("studio.db")));
        web = new WebServer(store, new LiveLanes("test"), pin).start("127.0.0.1", 0);
        visit = new Visit(web.port());
    }

    @AfterEach
    void stop() {
        web.close();
        store.close();
    }

    @ParameterizedTest
    @ValueSource(strings = {"/lanes", "/board/home/one", "/sign-in", "/api/session", "/css/base.css", "/js/api.js",
        "/fonts/archivo-latin.woff2", "/icon.svg"})
    void anybodyMaySeeTheBoards(String path) throws Exception {
        pin.set(PIN);

        assertThat(visit.get(path).statusCode()).isEqualTo(200);
    }

    @ParameterizedTest
    @ValueSource(strings = {"/control/home/one", "/drills", "/players", "/runs", "/usage", "/health", "/board.html",
        "/sign-in.html", "/no/such/page", "/board", "/live", "/css/", "/board/home/one/more"})
    void everyOtherPageAsksToSignIn(String path) throws Exception {
        pin.set(PIN);
        HttpResponse<String> answer = visit.get(path);

        assertThat(answer.statusCode()).isEqualTo(303);
        assertThat(answer.headers().firstValue("Location").orElseThrow()).startsWith("/sign-in?to=%2F");
    }

    @ParameterizedTest
    @ValueSource(strings = {"GET", "POST", "PUT", "DELETE"})
    void whoeverIsNotSignedInCanDoNothing(String method) throws Exception {
        pin.set(PIN);
        for (String path : List.of("/api/pin", "/api/lanes/home/one/commands", "/api/x")) {
            assertThat(visit.send(method, path, null).statusCode()).as(path).isEqualTo(401);
        }
        if (!method.equals("GET")) {
            assertThat(visit.send(method, "/board/home/one", null).statusCode()).isEqualTo(401);
        }
    }

    @Test
    void thePinOpens() throws Exception {
        pin.set(PIN);
        visit.signIn(PIN, "Kim");

        assertThat(Visit.json(visit.get("/api/session")).get("who").asText()).isEqualTo("Kim");
        assertThat(visit.get("/no/such/page").statusCode()).as("looked for, and not there").isEqualTo(404);
    }

    @Test
    void aWrongPinDoesNot() throws Exception {
        pin.set(PIN);
        HttpResponse<String> answer = visit.send("POST", "/api/session", Map.of("pin", "739206"));

        assertThat(answer.statusCode()).isEqualTo(403);
        assertThat(answer.headers().firstValue("Set-Cookie")).isEmpty();
        assertThat(visit.get("/api/x").statusCode()).isEqualTo(401);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "{}", "{\"pin\":null}", "{\"pin\":\"\"}", "[]", "null", "{\"pin\":{}}", "{\"pn\":\"1\"}", "{"})
    void whatMakesNoSenseIsNoPin(String body) throws Exception {
        pin.set(PIN);
        HttpResponse<String> answer = visit.send(visit.request("/api/session").header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString(body)));

        assertThat(answer.statusCode()).isEqualTo(400);
        assertThat(Visit.json(answer).get("error").asText()).isNotBlank();
    }

    @Test
    void anIdThatSomebodyElseKnowsIsNeverSignedIn() throws Exception {
        pin.set(PIN);
        visit.withCookie("chosen-by-somebody-else").signIn(PIN, "Kim");
        String first = visit.cookie();
        assertThat(first).isNotEqualTo("chosen-by-somebody-else");
        assertThat(new Visit(web.port()).withCookie("chosen-by-somebody-else").get("/api/x").statusCode()).isEqualTo(401);

        visit.signIn(PIN, "Kim");
        assertThat(visit.cookie()).as("another at each sign-in").isNotEqualTo(first);
        assertThat(new Visit(web.port()).withCookie(first).get("/api/x").statusCode()).as("the old one").isEqualTo(401);
    }

    @Test
    void theIdFromBeforeThereWasAPinIsNotSignedIn() throws Exception {
        visit.arrives();
        String before = visit.cookie();
        pin.set(PIN);

        assertThat(visit.get("/api/x").statusCode()).isEqualTo(401);
        visit.signIn(PIN, "Kim");
        assertThat(visit.cookie()).isNotEqualTo(before);
    }

    @Test
    void noScriptAndNoOtherSiteHasTheCookie() throws Exception {
        pin.set(PIN);
        String set = visit.send("POST", "/api/session", Map.of("pin", PIN)).headers().firstValue("Set-Cookie").orElseThrow();

        assertThat(set).contains("; HttpOnly").contains("; SameSite=Strict").contains("; Path=/").doesNotContain("Domain");
    }

    @Test
    void whatChangesSomethingNeedsTheSessionsToken() throws Exception {
        pin.set(PIN);
        Visit other = new Visit(web.port()).signIn(PIN, "Lou");
        visit.signIn(PIN, "Kim");
        String mine = visit.token();
        Map<String, String> change = Map.of("now", PIN, "next", "850316");

        assertThat(visit.withToken(null).send("PUT", "/api/pin", change).statusCode()).isEqualTo(412);
        assertThat(visit.withToken("").send("PUT", "/api/pin", change).statusCode()).isEqualTo(412);
        assertThat(visit.withToken(other.token()).send("PUT", "/api/pin", change).statusCode()).isEqualTo(412);
        assertThat(pin.is(PIN)).isTrue();
        assertThat(visit.withToken(mine).send("PUT", "/api/pin", change).statusCode()).isEqualTo(200);
        assertThat(pin.is("850316")).isTrue();
    }

    @Test
    void pagesOfOtherSitesChangeNothing() throws Exception {
        pin.set(PIN);
        visit.signIn(PIN, "Kim");
        for (String[] header : new String[][] {{"Origin", "https://elsewhere.example"}, {"Origin", "null"},
            {"Sec-Fetch-Site", "cross-site"}, {"Sec-Fetch-Site", "same-site"}}) {
            assertThat(visit.send(visit.request("/api/session").header(header[0], header[1])
                    .header(Access.TOKEN_HEADER, visit.token()).DELETE()).statusCode()).as(header[1]).isEqualTo(403);
        }
        assertThat(visit.send(visit.request("/api/session").header("Origin", "http://localhost:" + web.port())
                .header(Access.TOKEN_HEADER, visit.token()).DELETE()).statusCode()).isEqualTo(200);
    }

    @Test
    void aFormOfAnotherSiteCannotSignAnybodyIn() throws Exception {
        pin.set(PIN);
        String body = "{\"pin\":\"" + PIN + "\"}";

        assertThat(visit.send(visit.request("/api/session").header("Content-Type", "text/plain")
                .POST(BodyPublishers.ofString(body))).statusCode()).isEqualTo(415);
        assertThat(visit.send(visit.request("/api/session").POST(BodyPublishers.ofString(body))).statusCode()).isEqualTo(415);
        assertThat(visit.send(visit.request("/api/session").header("Content-Type", "application/json")
                .header("Origin", "https://elsewhere.example").POST(BodyPublishers.ofString(body))).statusCode()).isEqualTo(403);
    }

    @Test
    void triesAreLimitedAlsoForTheRightPin() throws Exception {
        pin.set(PIN);
        for (int i = 0; i < 5; i++) {
            assertThat(visit.send("POST", "/api/session", Map.of("pin", "wrong-" + i)).statusCode()).isEqualTo(403);
        }
        HttpResponse<String> answer = visit.send("POST", "/api/session", Map.of("pin", PIN));

        assertThat(answer.statusCode()).isEqualTo(429);
        assertThat(Visit.json(answer).get("error").asText()).isEqualTo("Too many tries. Try again in 1 second.");
    }

    @Test
    void theTriesAtChangingThePinAreTheSameTries() throws Exception {
        pin.set(PIN);
        visit.signIn(PIN, "Kim");
        for (int i = 0; i < 5; i++) {
            visit.send("PUT", "/api/pin", Map.of("now", "wrong-" + i, "next", "850316"));
        }

        assertThat(visit.send("PUT", "/api/pin", Map.of("now", PIN, "next", "850316")).statusCode()).isEqualTo(429);
        assertThat(pin.is(PIN)).isTrue();
    }

    @Test
    void anotherPinEndsEverybodyElsesSession() throws Exception {
        pin.set(PIN);
        Visit other = new Visit(web.port()).signIn(PIN, "Lou");
        visit.signIn(PIN, "Kim");
        visit.send("PUT", "/api/pin", Map.of("now", PIN, "next", "850316"));

        assertThat(other.get("/api/x").statusCode()).isEqualTo(401);
        assertThat(visit.get("/api/x").statusCode()).as("whoever changed it goes on").isEqualTo(404);
    }

    @Test
    void signingOutEndsTheSession() throws Exception {
        pin.set(PIN);
        visit.signIn(PIN, "Kim");
        String id = visit.cookie();
        visit.send("DELETE", "/api/session", null);

        assertThat(new Visit(web.port()).withCookie(id).get("/api/x").statusCode()).isEqualTo(401);
    }

    @Test
    void withoutAPinWhoeverSitsHereIsStaffAndCanSetOne() throws Exception {
        visit.arrives();
        assertThat(visit.get("/api/x").statusCode()).isEqualTo(404);
        assertThat(visit.send("PUT", "/api/pin", Map.of("next", "123456")).statusCode()).isEqualTo(400);
        assertThat(visit.send("PUT", "/api/pin", Map.of("next", PIN)).statusCode()).isEqualTo(200);

        assertThat(pin.is(PIN)).isTrue();
        assertThat(new Visit(web.port()).get("/api/x").statusCode()).isEqualTo(401);
    }

    @Test
    void withoutAPinNeedsATokenAllTheSame() throws Exception {
        assertThat(visit.send("PUT", "/api/pin", Map.of("next", PIN)).statusCode()).isEqualTo(412);
        assertThat(pin.isSet()).isFalse();
    }

    @Test
    void aNameThatPointsHereIsNotHere() throws Exception {
        for (String host : List.of("elsewhere.example", "elsewhere.example:" + web.port(), "localhost.elsewhere.example",
                "192.168.1.7:" + web.port())) {
            assertThat(Raw.status(Raw.get(web.port(), "/api/x", host))).as(host).isEqualTo(401);
            assertThat(Raw.get(web.port(), "/api/session", host)).contains("\"staff\":false", "\"token\":null");
        }
        assertThat(Raw.status(Raw.get(web.port(), "/api/x", "localhost:" + web.port()))).isEqualTo(404);
    }

    @Test
    void whatAProxyPassesOnDoesNotComeFromHere() throws Exception {
        assertThat(Raw.status(Raw.get(web.port(), "/api/x", "localhost", "X-Forwarded-For: 127.0.0.1"))).isEqualTo(401);
        assertThat(Raw.status(Raw.get(web.port(), "/api/x", "localhost", "Forwarded: for=127.0.0.1"))).isEqualTo(401);
    }

    @Test
    void aPinFileThatMakesNoSenseLetsNobodyIn() throws Exception {
        Files.writeString(folder.resolve("staff-pin"), "");

        assertThat(visit.get("/api/x").statusCode()).isEqualTo(401);
        assertThat(visit.send("POST", "/api/session", Map.of("pin", "unreadable")).statusCode()).isEqualTo(403);
    }

    @Test
    void noWayOfWritingAPathLeadsInside() throws Exception {
        pin.set(PIN);
        Pattern open = Pattern.compile("/(lanes|sign-in|api/session|icon\\.svg|board/[^/]+/[^/]+|(css|js|fonts)/[A-Za-z0-9.-]+)?/?");
        String[] parts = {"..", ".", "%2e%2e", "%2E.", "css", "js", "board", "home", "api", "session", "board.html",
            "sign-in.html", "lanes", "", ";x", "..;", "%2f", "%5c", "\\", "control", "base.css", "%00", "web", "META-INF"};
        long seed = Long.getLong("cupbeam.seed", System.nanoTime());
        Random random = new Random(seed);
        for (int i = 0; i < 400; i++) {
            StringBuilder path = new StringBuilder();
            for (int depth = 1 + random.nextInt(6); depth > 0; depth--) {
                path.append('/').append(parts[random.nextInt(parts.length)]);
            }
            String answer = Raw.get(web.port(), path.toString(), "localhost");
            if (Raw.status(answer) == 200) {
                assertThat(path.toString()).as("seed " + seed).matches(open);
            }
            assertThat(answer).as(path + ", seed " + seed).doesNotContain("root:x:", "Manifest-Version");
        }
    }

    @Test
    void everyAnswerTellsTheBrowserToBeStrict() throws Exception {
        pin.set(PIN);
        for (String path : List.of("/lanes", "/css/base.css", "/api/session", "/api/x", "/drills", "/css/none.css")) {
            HttpResponse<String> answer = visit.get(path);
            assertThat(answer.headers().firstValue("Content-Security-Policy").orElse("")).as(path)
                    .contains("default-src 'none'", "frame-ancestors 'none'", "script-src 'self'").doesNotContain("unsafe");
            assertThat(answer.headers().firstValue("X-Content-Type-Options")).as(path).contains("nosniff");
            assertThat(answer.headers().firstValue("Referrer-Policy")).as(path).contains("no-referrer");
            assertThat(answer.headers().firstValue("Server")).as(path).isEmpty();
        }
        assertThat(visit.get("/api/session").headers().firstValue("Cache-Control")).contains("no-store");
    }

    @Test
    void saysThatNothingIsThereInWords() throws Exception {
        assertThat(visit.get("/no/such/page").body()).contains("Nothing is here");
        assertThat(Visit.json(visit.get("/api/x")).get("error").asText()).isEqualTo("There is nothing under that address.");
    }

    @Test
    void takesInOnlySoMuch() throws Exception {
        pin.set(PIN);

        assertThat(visit.send("POST", "/api/session", Map.of("pin", "x".repeat(2_000_000))).statusCode()).isEqualTo(413);
    }

    @Test
    void answersToNoOddMethods() throws Exception {
        pin.set(PIN);
        visit.signIn(PIN, "Kim");
        for (String method : List.of("TRACE", "PATCH", "OPTIONS", "FROB")) {
            assertThat(visit.send(method, "/api/session", null).statusCode()).as(method).isEqualTo(405);
        }
    }
}

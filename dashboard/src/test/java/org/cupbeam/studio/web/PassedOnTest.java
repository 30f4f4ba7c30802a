package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.web.access.Proxies;
import org.cupbeam.studio.web.access.StaffPin;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a request says of whom it is passed on for, from a proxy that is named to the host and from anybody else. */
class PassedOnTest {
    private static final String PIN = "739205";

    @TempDir
    private Path folder;
    private Store store;
    private WebServer web;

    @BeforeEach
    void open() {
        store = Store.open(Database.file(folder.resolve("studio.db")));
    }

    @AfterEach
    void stop() {
        web.close();
        store.close();
    }

    @Test
    void triesAreCountedForTheProxysCallerAndNotForTheProxy() throws Exception {
        start("127.0.0.1");
        for (int i = 0; i < 5; i++) {
            assertThat(signIn("wrong-" + i, "X-Forwarded-For", "10.0.0.1").statusCode()).isEqualTo(403);
        }

        assertThat(signIn(PIN, "X-Forwarded-For", "10.0.0.1").statusCode()).as("the one who tried").isEqualTo(429);
        assertThat(signIn(PIN, "X-Forwarded-For", "10.0.0.2").statusCode()).as("somebody else").isEqualTo(200);
    }

    @Test
    void nobodyElseIsBelieved() throws Exception {
        start("192.0.2.7");
        for (int i = 0; i < 5; i++) {
            assertThat(signIn("wrong-" + i, "X-Forwarded-For", "10.0.0." + i).statusCode()).isEqualTo(403);
        }
        HttpResponse<String> another = signIn(PIN, "X-Forwarded-For", "10.0.0.9");

        assertThat(another.statusCode()).as("one address, whatever it writes").isEqualTo(429);
        HttpResponse<String> page = get("/lanes", "X-Forwarded-Proto", "https");
        assertThat(page.headers().firstValue("Strict-Transport-Security")).isEmpty();
    }

    @Test
    void whereItIsTlsOutsideTheCookieIsForTlsAloneAndSoIsTheSite() throws Exception {
        start("127.0.0.1");
        HttpResponse<String> inside = signIn(PIN, "X-Forwarded-Proto", "https");

        assertThat(inside.headers().firstValue("Set-Cookie").orElseThrow()).contains("; Secure");
        assertThat(inside.headers().firstValue("Strict-Transport-Security")).contains("max-age=31536000");
        HttpResponse<String> plain = signIn(PIN, "X-Forwarded-Proto", "http");
        assertThat(plain.headers().firstValue("Set-Cookie").orElseThrow()).doesNotContain("Secure");
        assertThat(plain.headers().firstValue("Strict-Transport-Security")).isEmpty();
    }

    @Test
    void whereItIsTlsOutsideAPageOfThePlainAddressChangesNothing() throws Exception {
        start("127.0.0.1");
        for (String scheme : List.of("http", "https")) {
            HttpResponse<String> answer = new Visit(web.port()).send(new Visit(web.port()).request("/api/session")
                    .header("X-Forwarded-Proto", "https").header("Origin", scheme + "://localhost:" + web.port())
                    .header("Content-Type", "application/json").POST(BodyPublishers.ofString("{\"pin\":\"" + PIN + "\"}")));
            assertThat(answer.statusCode()).as(scheme).isEqualTo(scheme.equals("http") ? 403 : 200);
        }
    }

    @Test
    void whoSitsAtTheProxyIsNotWhoSitsHere() throws Exception {
        web = new WebServer(store, new LiveLanes("test"), StaffPin.quick(folder.resolve("none")), Clock.systemDefaultZone(),
                Proxies.at(List.of("127.0.0.1"))).start("127.0.0.1", 0);

        assertThat(get("/api/x", "X-Forwarded-For", "127.0.0.1").statusCode()).isEqualTo(401);
        assertThat(get("/api/x", "X-Forwarded-For", "rubbish").statusCode()).isEqualTo(401);
    }

    private void start(String proxy) throws Exception {
        StaffPin pin = StaffPin.quick(folder.resolve("staff-pin"));
        pin.set(PIN);
        web = new WebServer(store, new LiveLanes("test"), pin, Clock.systemDefaultZone(), Proxies.at(List.of(proxy)))
                .start("127.0.0.1", 0);
    }

    private HttpResponse<String> get(String path, String header, String value) throws Exception {
        Visit visit = new Visit(web.port());
        return visit.send(visit.request(path).header(header, value).GET());
    }

    private HttpResponse<String> signIn(String pin, String header, String value) throws Exception {
        Visit visit = new Visit(web.port());
        return visit.send(visit.request("/api/session").header(header, value).header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString("{\"pin\":\"" + pin + "\"}")));
    }
}

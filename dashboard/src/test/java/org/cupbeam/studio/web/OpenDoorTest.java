package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.Scenes;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.web.access.StaffPin;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a board's link opens, which is its board; and what names of files and paths can lead to, which is nothing. */
class OpenDoorTest {
    private static final String PIN = "739205";
    private static final Set<String> OPEN = Set.of("/", "/alive", "/ready", "/lanes", "/board/{studio}/{lane}", "/sign-in", "/api/session");
    private static final List<String> METHODS = List.of("GET", "HEAD", "POST", "PUT", "DELETE", "PATCH", "OPTIONS", "TRACE");
    private static final Map<String, String> REAL = Map.of("{studio}", "home", "{lane}", "lane-1", "{id}", "1", "{key}", "ladder");

    @TempDir
    private Path folder;
    private Store store;
    private WebServer web;
    private Visit staff;
    private Visit passerBy;

    @BeforeEach
    void start() throws Exception {
        StaffPin pin = StaffPin.quick(folder.resolve("staff-pin"));
        pin.set(PIN);
        store = Store.open(Database.file(folder.resolve("studio.db")));
        LiveLanes lanes = new LiveLanes("test");
        lanes.askBroker(() -> true);
        lanes.score(new Topics("home", "lane-1"), Scenes.duel(false));
        web = new WebServer(store, lanes, pin).start("127.0.0.1", 0);
        staff = new Visit(web.port()).signIn(PIN, "Kim");
        passerBy = new Visit(web.port());
        assertThat(staff.send("POST", "/api/players", Map.of("name", "Ada")).statusCode()).isEqualTo(200);
    }

    @AfterEach
    void stop() {
        web.close();
        store.close();
    }

    @Test
    void everyOtherAddressIsShutToWhoeverHasABoardsLinkAndNothingIsChangedAtAny() throws Exception {
        String before = record();
        assertThat(web.paths()).contains("/api/record/export", "/api/pin", "/control/{studio}/{lane}").hasSizeGreaterThan(60);
        for (String path : web.paths()) {
            for (String method : METHODS) {
                HttpResponse<String> answer = passerBy.send(method, real(path), null);
                boolean looks = method.equals("GET") || method.equals("HEAD");
                String what = method + " " + path;
                if (looks && OPEN.contains(path)) {
                    assertThat(answer.statusCode()).as(what).isIn(200, 302);
                } else if (method.equals("POST") && path.equals("/api/session")) {
                    assertThat(answer.statusCode()).as("signs nobody in without a PIN").isEqualTo(400);
                } else {
                    assertThat(answer.statusCode()).as(what).isIn(303, 401, 405);
                    assertThat(answer.body()).as(what).doesNotContain("Ada").hasSizeLessThan(200);
                }
                assertThat(answer.headers().firstValue("Set-Cookie")).as(what).isEmpty();
            }
        }
        for (String stream : List.of("/live/lanes", "/live/home/lane-1")) {
            assertThat(passerBy.send("POST", stream, null).statusCode()).isEqualTo(401);
        }
        assertThat(record()).isEqualTo(before);
    }

    /** With staff's own session, so that nothing but the path stands in the way. */
    @Test
    void noPathLeadsOutOfThePagesFolder() throws Exception {
        for (String path : List.of("/css/..%2f..%2fdb/studio/V1__lanes_and_their_events.sql", "/css/../../simplelogger.properties",
                "/css/%2e%2e/%2e%2e/simplelogger.properties", "/js/..;/..;/simplelogger.properties",
                "/fonts/..%5c..%5csimplelogger.properties", "/css//../../simplelogger.properties", "/css/....//simplelogger.properties",
                "/css/%252e%252e%252fsimplelogger.properties", "/../../../../../../etc/passwd", "/css/base.css%00.html",
                "/web/css/base.css", "/META-INF/MANIFEST.MF", "/api/presets/..%2f..%2fx/file", "/css/", "/js")) {
            String answer = Raw.get(web.port(), path, "localhost", "Cookie: cupbeam-staff=" + staff.cookie());

            assertThat(Raw.status(answer)).as(path).isIn(400, 404);
            assertThat(answer).as(path).doesNotContain("defaultLogLevel", "create table", "root:", "Manifest-Version", "@font-face");
        }
    }

    @Test
    void aFilesNameIsPlainWhateverAPlayerOrADrillIsCalled() throws Exception {
        for (String name : List.of("../../etc/passwd", "a\"; filename=\"b.exe", "..", "C:\\con.txt", "\u202Etxt.exe", "<script>",
                "a/b;c=d", "\u5F20\u4F1F", ".profile", "-rf", "name%0d%0aSet-Cookie: x=y")) {
            int player = Visit.json(staff.send("POST", "/api/players", Map.of("name", name))).get("id").asInt();
            int drill = Visit.json(staff.send("POST", "/api/drills", Map.of("drill", drill(name)))).get("id").asInt();
            for (String path : List.of("/api/player/" + player + "/export?as=json", "/api/drills/" + drill + "/file")) {
                HttpResponse<String> file = staff.get(path);
                assertThat(file.statusCode()).isEqualTo(200);
                assertThat(file.headers().firstValue("Content-Disposition").orElseThrow()).as(name)
                        .matches("attachment; filename=\"[a-z0-9_][a-z0-9_.-]*\\.(json|toml)\"").doesNotContain("..", "exe\"");
                assertThat(file.headers().firstValue("Set-Cookie")).isEmpty();
            }
        }
    }

    /** Staff's own session, and an address wherever words are taken: the host never goes there. */
    @Test
    void nothingThatAnybodyWritesHasTheHostGoAnywhere() throws Exception {
        try (ServerSocket elsewhere = new ServerSocket(0, 50, InetAddress.getLoopbackAddress())) {
            elsewhere.setSoTimeout(500);
            String address = "http://127.0.0.1:" + elsewhere.getLocalPort() + "/x";
            String asked = Stream.of("to", "url", "file", "path", "from", "lane", "player", "as", "sheet")
                    .map(each -> each + "=" + address).collect(Collectors.joining("&", "?", ""));
            Map<String, Object> words = new HashMap<>(drill(address));
            List.of("url", "file", "path", "text", "words", "remark", "reason", "who", "next", "zone", "hours", "player", "drill")
                    .forEach(each -> words.put(each, address));
            for (String path : web.paths()) {
                for (String method : List.of("GET", "POST", "PUT")) {
                    staff.send(method, real(path) + asked, method.equals("GET") ? null : words);
                }
            }
            staff.send("POST", "/api/drills", Map.of("drill", drill(address)));
            staff.send("POST", "/api/players", Map.of("name", address));
            assertThat(record()).as("the words were taken").contains(address);
            assertThatThrownBy(elsewhere::accept).isInstanceOf(SocketTimeoutException.class);

            try (Socket one = new Socket(elsewhere.getInetAddress(), elsewhere.getLocalPort()); Socket seen = elsewhere.accept()) {
                assertThat(seen.getPort()).as("one that went there would have been seen").isEqualTo(one.getLocalPort());
            }
        }
    }

    private static Map<String, Object> drill(String name) {
        return Map.of("name", name, "stations", Map.of("first_mm", 1000, "step_mm", 500, "count", 6),
                "balls", Map.of("count", 3, "supply", "every-station"), "advance", Map.of("holed", 1),
                "overshoot", Map.of("penalty", "none"), "duel", Map.of("turns", "station"));
    }

    private String record() throws Exception {
        return staff.get("/api/record/export?as=json").body() + staff.get("/api/drills").body() + staff.get("/api/usage").body();
    }

    private static String real(String path) {
        String real = path;
        for (Map.Entry<String, String> each : REAL.entrySet()) {
            real = real.replace(each.getKey(), each.getValue());
        }
        return real;
    }
}

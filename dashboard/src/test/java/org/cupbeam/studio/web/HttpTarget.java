package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.net.SocketException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.cupbeam.event.Topics;
import org.cupbeam.fuzz.Fuzz;
import org.cupbeam.fuzz.Target;
import org.cupbeam.studio.Pages;
import org.cupbeam.studio.Scenes;
import org.cupbeam.studio.ScriptedLane;

/**
 * Whole requests, byte by byte over a socket, by somebody signed in: the host answers, or closes the connection where there
 * is nothing to answer, within five seconds, and never that something went wrong in itself. {@code @C} and {@code @T} are
 * the session's cookie and token of now.
 */
public final class HttpTarget implements Target, AutoCloseable {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final int PATIENCE_MS = 5_000;
    private static final int SIGNED_IN_FOR = 25;
    private static final int MOST_READ = 4 << 20;
    private static final String DRILL = "{\"name\":\"D\",\"stations\":{\"first_mm\":914.4,\"step_mm\":914.4,\"count\":3},\"balls\":"
            + "{\"count\":6,\"supply\":\"every-station\"},\"advance\":{\"holed\":1}}";
    private static final String LEAGUE = "{\"name\":\"L\",\"drill\":" + DRILL + ",\"breaks\":\"straight\",\"slope\":null,\"first\":\"2026-11-18\","
            + "\"last\":\"2026-12-01\",\"runs\":2,\"studios\":[\"home\"]}";
    private static final List<String> LOOKS = List.of("/", "/lanes", "/board/home/one", "/api/players?name=a&by=name", "/api/player/1",
            "/api/runs?player=1&drill=Ladder&from=2026-11-01&to=2026-11-25&limit=5&lane=1&breaks=straight&slope=uphill",
            "/api/runs?after=1-2", "/api/run/1", "/api/report/1?day=2026-11-25", "/api/changes?after=9", "/api/usage?month=2026-11",
            "/api/usage/export?as=csv&month=2026-11", "/api/insight/1?units=feet&drill=preset:ladder&balls=3&rival=2",
            "/api/insight/1/next?distance_mm=2000&putts=10", "/api/green/home/one?day=2026-11-25", "/api/green/home/one/test?without=1,2",
            "/api/health/home/one/places?beam=0&at_mm=-300&within_mm=2",
            "/api/green/home/one/export?as=json", "/api/card?stimp_ft=10&uphill_percent=1&side_percent=1&past_mm=300&stations_mm=1000,2000",
            "/api/card/export?as=csv&stimp_ft=9&uphill_percent=0&side_percent=0&past_mm=300&stations_mm=1000", "/api/health",
            "/api/leagues", "/api/league/1?week=2026-W48", "/api/league/1/export?as=csv&sheet=weeks",
            "/api/drills/1/file", "/api/presets/ladder/file", "/api/player/1/export?as=json", "/api/runs/export?as=csv&sheet=runs",
            "/api/record/export?as=json", "/api/lanes/home/one/putts", "/css/base.css", "/live/lanes", "/live/home/one", "/sign-in?to=%2F");
    private static final List<List<String>> CHANGES = List.of(
            List.of("POST", "/api/session", "{\"pin\":\"1\",\"who\":\"Kim\"}"), List.of("PUT", "/api/pin", "{\"now\":\"1\",\"next\":\"1\"}"),
            List.of("POST", "/api/players", "{\"name\":\"Cy\",\"hand\":\"left\",\"units\":\"feet\",\"remark\":\"x\"}"),
            List.of("PUT", "/api/player/1", "{\"name\":\"Ada\",\"hand\":null}"), List.of("POST", "/api/player/1/merge", "{\"into\":2}"),
            List.of("DELETE", "/api/player/9", ""), List.of("POST", "/api/player/1/notes", "{\"words\":\"w\"}"),
            List.of("POST", "/api/run/1/notes", "{\"words\":\"w\"}"), List.of("POST", "/api/attempt/1/notes", "{\"words\":\"w\"}"),
            List.of("DELETE", "/api/note/1", ""), List.of("POST", "/api/attempt/1/void", "{\"reason\":\"r\"}"),
            List.of("POST", "/api/attempt/1/restore", "{\"reason\":\"r\"}"),
            List.of("POST", "/api/run/1/reassign", "{\"player\":\"Bo\",\"reason\":\"r\"}"),
            List.of("PUT", "/api/green/home/one/range", "{\"low_ft\":9,\"high_ft\":11}"),
            List.of("PUT", "/api/usage/hours", "{\"zone\":\"Europe/Berlin\",\"hours\":\"Mo-Fr 09:00-22:00\"}"),
            List.of("POST", "/api/health/home/one/places/file?beam=0&at_mm=-300&within_mm=2", "{\"text\":\"[green]\\nstimp_ft = 10\"}"),
            List.of("POST", "/api/green/home/one/test/keep", "{\"without\":[1,2]}"), List.of("POST", "/api/drills", "{\"drill\":" + DRILL + "}"),
            List.of("PUT", "/api/drills/1", "{\"drill\":" + DRILL + ",\"version\":1}"), List.of("DELETE", "/api/drills/1", "{\"version\":1}"),
            List.of("POST", "/api/drills/1/put-back", ""), List.of("POST", "/api/drill-text/read", "{\"text\":\"name = \\\"D\\\"\\n[balls]\"}"),
            List.of("POST", "/api/leagues", LEAGUE), List.of("DELETE", "/api/league/1", ""), List.of("POST", "/api/league/1/put-back", ""),
            List.of("PUT", "/api/league/1", "{\"version\":1,\"name\":\"M\",\"last\":\"2026-12-01\"}"),
            List.of("POST", "/api/drill-text/write", "{\"drill\":" + DRILL + "}"),
            List.of("POST", "/api/drill-rehearsal", "{\"drill\":" + DRILL + ",\"duel\":true,\"putts\":\"hsmp\",\"rig_limit_mm\":900}"),
            List.of("POST", "/api/lanes/home/one/commands", "{\"id\":\"c-1\",\"command\":\"start\",\"drill\":" + DRILL + ",\"players\":[\"A\"]}"),
            List.of("POST", "/api/lanes/home/one/commands", "{\"id\":\"c-2\",\"command\":\"miss\",\"finish_mm\":-20}"),
            List.of("POST", "/api/import", "{\"cupbeam_export\":1,\"players\":[{\"name\":\"Di\",\"created\":\"2026-01-01T00:00:00Z\"}]}"));

    private final Pages pages;
    private final int port;
    private String cookie = "";
    private String token = "";
    private int asked;

    public HttpTarget() throws IOException {
        pages = new Pages(Fuzz.folder("http"));
        port = URI.create(pages.url("/")).getPort();
        ScriptedLane lane = new ScriptedLane("one", "j1");
        pages.keep(lane.starts("r1", "d1", "Ada", 1), lane.starts("r2", "d1", "Bo", 2), lane.holes("r1", "d1", "Ada", 1),
                lane.misses("r1", "d1", "Ada", 2, 417), lane.misses("r2", "d1", "Bo", 1, 1_200));
        pages.lanes.health(new Topics("home", "one"), Scenes.online(1, "j1"));
        pages.done("POST", "/api/drills", "{\"drill\":" + DRILL + "}");
        pages.done("POST", "/api/leagues", LEAGUE);
    }

    @Override
    public String name() {
        return "http";
    }

    @Override
    public List<byte[]> seeds() {
        List<byte[]> seeds = new ArrayList<>();
        LOOKS.forEach(each -> seeds.add(("GET " + each + " HTTP/1.1\r\nHost: localhost\r\nCookie: cupbeam-staff=@C\r\nConnection: close"
                + "\r\n\r\n").getBytes(StandardCharsets.UTF_8)));
        for (List<String> each : CHANGES) {
            String body = each.get(2);
            boolean chunked = body.length() % 5 == 4;
            seeds.add((each.get(0) + " " + each.get(1) + " HTTP/1.1\r\nHost: localhost\r\nCookie: cupbeam-staff=@C\r\nX-Cupbeam-Token: @T\r\n"
                    + "Content-Type: application/json\r\nConnection: close\r\n" + (chunked ? "Transfer-Encoding: chunked\r\n\r\n"
                    + Integer.toHexString(body.length()) + "\r\n" + body + "\r\n0\r\n\r\n" : "Content-Length: " + body.length()
                    + "\r\n\r\n" + body)).getBytes(StandardCharsets.UTF_8));
        }
        return seeds;
    }

    @Override
    public List<String> words() {
        return List.of("GET", "POST", "PUT", "DELETE", "HEAD", "TRACE", "OPTIONS", "CONNECT", "PRI", "HTTP/1.0", "HTTP/2.0", "HTTP/9.9", "\r\n",
                "Host: localhost\r\n", "Content-Length: -1\r\n", "Content-Length: 99999999999999999999\r\n", "Transfer-Encoding: chunked\r\n",
                "Transfer-Encoding: gzip, chunked\r\n", "Content-Encoding: gzip\r\n", "Expect: 100-continue\r\n", "Upgrade: h2c\r\n",
                "Content-Type: multipart/form-data; boundary=x\r\n", "Content-Type: text/csv\r\n", "--x\r\nContent-Disposition: form-data\r\n",
                "Range: bytes=0-1,5-\r\n", "If-Modified-Since: x\r\n", "Accept-Encoding: gzip;q=9\r\n", "Cookie: a=\"\r\n", "FFFFFFFFFFFFFFFF\r\n",
                "0\r\n\r\n", "/%2e%2e/", "//", ";x=y", "?", "&", "=", "%", "%zz", "%c0%ae", "[]", "{}", "null", "\"\\ud800\"", "{\"a\":", "[[[[", "1e999",
                "-0", "99999999999", "2147483648", "9999-12-31", "0000-01-01", "\"words\":", "\"name\":", "\"version\":", "as=json", "as=xml", "name=");
    }

    @Override
    public int longest() {
        return 32 * 1024;
    }

    @Override
    public String take(byte[] input) throws Exception {
        if (asked++ % SIGNED_IN_FOR == 0) {
            signIn();
        }
        byte[] request = new String(input, StandardCharsets.ISO_8859_1).replace("@C", cookie).replace("@T", token)
                .getBytes(StandardCharsets.ISO_8859_1);
        String answer = answered(request);
        if (answer.isEmpty()) {
            return "closed without an answer";
        }
        assertThat(answer).matches("(?s)HTTP/1\\.[01] \\d{3} .*");
        int status = Integer.parseInt(answer.substring(9, 12));
        assertThat(status).as(() -> answer.substring(0, Math.min(2_000, answer.length()))).isNotIn(500, 502, 503);
        return status < 400 ? ACCEPTED + (status == 200 ? "" : "went on with " + status) : status + " " + words(answer);
    }

    private void signIn() throws Exception {
        String answer = answered(("GET /api/session HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n").getBytes(StandardCharsets.UTF_8));
        JsonNode standing = JSON.readTree(answer.substring(answer.indexOf("\r\n\r\n") + 4));
        token = standing.get("token").asText();
        cookie = answer.replaceAll("(?s).*cupbeam-staff=([^;]*);.*", "$1");
    }

    /** What is said in a refusal, of ours or of the server's own. */
    private static String words(String answer) throws IOException {
        String body = answer.substring(answer.indexOf("\r\n\r\n") + 4);
        String type = answer.toLowerCase(java.util.Locale.ROOT).contains("content-type: application/json") ? "json" : "other";
        if (type.equals("json") && body.startsWith("{")) {
            String error = JSON.readTree(body).get("error").asText();
            assertThat(error).isNotBlank();
            return error;
        }
        assertThat(body).as("of a server that does not tell what it is").doesNotContainIgnoringCase("jetty").doesNotContain("\tat ");
        return type;
    }

    private String answered(byte[] request) throws IOException {
        try (Socket socket = new Socket("127.0.0.1", port)) {
            socket.setSoTimeout(PATIENCE_MS);
            try {
                socket.getOutputStream().write(request);
                socket.shutdownOutput();
            } catch (SocketException closedEarly) {
                // An answer may have come before all was sent.
            }
            return read(socket.getInputStream());
        }
    }

    private static String read(InputStream in) throws IOException {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        byte[] buffer = new byte[8_192];
        try {
            for (int count = in.read(buffer); count >= 0 && all.size() < MOST_READ; count = in.read(buffer)) {
                all.write(buffer, 0, count);
                if (all.size() < 4_096 && all.toString(StandardCharsets.ISO_8859_1).contains("text/event-stream")) {
                    break; // has no end
                }
            }
        } catch (SocketException reset) {
            // What had come counts.
        }
        return all.toString(StandardCharsets.UTF_8);
    }

    @Override
    public void close() {
        pages.close();
    }
}

package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.HttpURLConnection;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.cupbeam.event.ScoreJson;
import org.cupbeam.studio.store.Database;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The streams over real HTTP. */
@Timeout(60)
class LiveIT {
    private static final String LANE = "/live/home/lane-1";
    private static final long LARGE_BYTES = 40_000;

    @TempDir
    Path folder;
    private EmbeddedBroker broker;
    private Host host;
    private Wire wire;

    @BeforeEach
    void start() throws Exception {
        broker = new EmbeddedBroker(0);
        host = Host.start(Database.file(folder.resolve("studio.db")), broker.uri(), "host", Door.here(0, folder));
        wire = new Wire(broker.uri());
    }

    @AfterEach
    void stop() throws Exception {
        wire.close();
        host.close();
        broker.close();
    }

    @Test
    void givesTheWholeStateToWhoeverComesLater() throws Exception {
        try (EventStreamReader first = new EventStreamReader(host.port(), LANE)) {
            say(1);
            String data = first.await("score").data();
            try (EventStreamReader second = new EventStreamReader(host.port(), LANE)) {
                EventStreamReader.Said said = second.await("score");
                assertThat(said.data()).isEqualTo(data);
                assertThat(said.id()).matches("[0-9a-f]{8}-[0-9]+");
            }
        }
    }

    @Test
    void reachesTwoHundredBoards() throws Exception {
        List<EventStreamReader> boards = new ArrayList<>();
        try {
            for (int i = 0; i < 200; i++) {
                boards.add(new EventStreamReader(host.port(), LANE));
            }
            say(1);
            for (EventStreamReader each : boards) {
                assertThat(each.await("score").data()).contains("\"sequence\":\"0000000000000001\"");
            }
        } finally {
            boards.forEach(EventStreamReader::close);
        }
    }

    @Test
    void letsABoardGoThatTakesNothingInAndServesTheOthers() throws Exception {
        try (Socket slow = new Socket("127.0.0.1", host.port());
             EventStreamReader quick = new EventStreamReader(host.port(), LANE)) {
            slow.setReceiveBufferSize(65_536);
            slow.getOutputStream().write(("GET " + LANE + " HTTP/1.1\r\nHost: localhost\r\n\r\n")
                    .getBytes(StandardCharsets.US_ASCII));
            int sent = 0;
            for (; sent < 200; sent++) {
                sayLarge(sent + 1);
            }
            String last = "\"sequence\":\"%016d\"".formatted(sent);
            while (!quick.await("score").data().contains(last)) {
                assertThat(sent).isPositive();
            }
            assertThat(drain(slow)).as("bytes that the slow board was sent before it was let go")
                    .isLessThan(sent * LARGE_BYTES);
        }
    }

    @Test
    void tellsTheBrowserToTrustNothingButTheHost() throws Exception {
        for (String path : List.of("/board/home/lane-1", "/js/board.js", "/lanes", "/nowhere")) {
            HttpURLConnection answer = get(path);
            assertThat(answer.getHeaderField("Content-Security-Policy")).as(path)
                    .startsWith("default-src 'none'; script-src 'self'").doesNotContain("unsafe");
            assertThat(answer.getHeaderField("X-Content-Type-Options")).as(path).isEqualTo("nosniff");
        }
        try (EventStreamReader stream = new EventStreamReader(host.port(), LANE)) {
            assertThat(stream.header("Content-Type")).startsWith("text/event-stream");
            assertThat(stream.header("Cache-Control")).isEqualTo("no-store");
        }
    }

    @Test
    void servesNothingFromOutsideItsPages() throws Exception {
        for (String path : List.of("/../simplelogger.properties", "/%2e%2e/db/studio/V1__lanes_and_their_events.sql",
                "/js/..%2f..%2fsimplelogger.properties", "/live/no/such/lane", "/live/UPPER/lane", "/live/x")) {
            assertThat(get(path).getResponseCode()).as(path).isBetween(400, 404);
        }
    }

    @Test
    void leadsHomeToTheOnlyLane() throws Exception {
        assertThat(get("/").getHeaderField("Location")).endsWith("/lanes");
        try (EventStreamReader board = new EventStreamReader(host.port(), LANE)) {
            say(1);
            board.await("score");
        }
        assertThat(get("/").getHeaderField("Location")).endsWith("/board/home/lane-1");
    }

    private HttpURLConnection get(String path) throws IOException {
        HttpURLConnection answer = (HttpURLConnection)
                URI.create("http://127.0.0.1:" + host.port() + path).toURL().openConnection();
        answer.setInstanceFollowRedirects(false);
        answer.getResponseCode();
        return answer;
    }

    private void say(int sequence) throws Exception {
        wire.say("cupbeam/home/lane-1/score", ScoreJson.encode(Scenes.alone("Ada", sequence, Scenes.HOLED)), true);
    }

    /** A score as large as they come: many players with long names and all their putts. */
    private void sayLarge(int sequence) throws Exception {
        byte[] json = ScoreJson.encode(Scenes.crowd(sequence));
        assertThat(json.length).isGreaterThan((int) LARGE_BYTES);
        wire.say("cupbeam/home/lane-1/score", json, true);
    }

    private static long drain(Socket socket) throws IOException {
        long bytes = 0;
        byte[] some = new byte[65_536];
        for (int n = socket.getInputStream().read(some); n >= 0; n = socket.getInputStream().read(some)) {
            bytes += n;
        }
        return bytes;
    }
}

package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketException;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.web.access.StaffPin;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Requests without end, too long, or slower than anybody is. */
@Timeout(60)
class HostileHttpTest {
    private static final String PIN = "739205";
    private static final int TEN_MB = 10 << 20;
    /** More than there are threads. */
    private static final int SLOW = 40;

    @TempDir
    private Path folder;
    private Store store;
    private WebServer web;
    private Visit visit;

    @BeforeEach
    void start() throws Exception {
        StaffPin pin = StaffPin.quick(folder.resolve("staff-pin"));
        pin.set(PIN);
        store = Store.open(Database.file(folder.resolve("studio.db")));
        web = new WebServer(store, new LiveLanes("test"), pin).start("127.0.0.1", 0);
        visit = new Visit(web.port()).signIn(PIN, "Kim");
    }

    @AfterEach
    void stop() {
        web.close();
        store.close();
    }

    @ParameterizedTest
    @ValueSource(strings = {"GET /%s HTTP/1.1\r\nHost: localhost\r\n\r\n", "GET / HTTP/1.1\r\nHost: localhost\r\nX: %s\r\n\r\n",
        "%s / HTTP/1.1\r\nHost: localhost\r\n\r\n", "GET /?%s HTTP/1.1\r\nHost: localhost\r\n\r\n", "GET / HTTP/1.1\r\nHost: %s\r\n\r\n",
        "GET / HTTP/1.1\r\nHost: localhost\r\nCookie: cupbeam-staff=%s\r\n\r\n"})
    void aLineOfTenMegabytesIsRefusedSoonAfterItsBeginning(String request) throws Exception {
        int sent = 0;
        try (Socket socket = connected()) {
            OutputStream to = socket.getOutputStream();
            String[] around = request.split("%s");
            to.write(around[0].getBytes(StandardCharsets.US_ASCII));
            byte[] filling = "a".repeat(64 * 1024).getBytes(StandardCharsets.US_ASCII);
            try {
                for (; sent < TEN_MB; sent += filling.length) {
                    to.write(filling);
                }
                to.write(around[1].getBytes(StandardCharsets.US_ASCII));
            } catch (SocketException closedOnUs) {
                assertThat(sent).isLessThan(TEN_MB);
            }
            assertThat(start(socket)).isIn("HTTP/1.1 400", "HTTP/1.1 414", "HTTP/1.1 431", "");
        }
        assertThat(visit.get("/api/session").statusCode()).isEqualTo(200);
    }

    @Test
    void aHeaderOfSoManyBytesIsTakenAndOneOfTwiceAsManyIsNot() throws Exception {
        assertThat(Raw.status(Raw.get(web.port(), "/lanes", "localhost", "X: " + "x".repeat(7_500)))).isEqualTo(200);
        assertThat(Raw.status(Raw.get(web.port(), "/lanes", "localhost", "X: " + "x".repeat(15_000)))).isEqualTo(431);
    }

    @Test
    void aBodyOfAMillionBytesIsTakenAndOneMoreIsNot() throws Exception {
        String frame = "{\"text\":\"\"}";
        int fits = 1_000_000 - frame.length();
        assertThat(visit.send("POST", "/api/drill-text/read", Map.of("text", "x".repeat(fits))).body())
                .contains("at most 20000 characters");
        assertThat(visit.send("POST", "/api/drill-text/read", Map.of("text", "x".repeat(fits + 1))).statusCode()).isEqualTo(413);
    }

    @Test
    void aChunkedBodyThatHasNoEndIsCutOff() throws Exception {
        try (Socket socket = connected()) {
            OutputStream to = socket.getOutputStream();
            to.write(signedIn("POST /api/drill-text/read", "application/json", "Transfer-Encoding: chunked"));
            byte[] chunk = ("10000\r\n" + " ".repeat(65_536) + "\r\n").getBytes(StandardCharsets.US_ASCII);
            int sent = 0;
            try {
                for (; sent < TEN_MB; sent += chunk.length) {
                    to.write(chunk);
                }
            } catch (SocketException closedOnUs) {
                assertThat(sent).isPositive();
            }
            assertThat(start(socket)).isIn("HTTP/1.1 413", "");
        }
        assertThat(visit.get("/api/players").statusCode()).isEqualTo(200);
    }

    @ParameterizedTest
    @ValueSource(strings = {"[", "{\"drill\":", "[{\"a\":"})
    void aHundredThousandDeepIsRefusedInWords(String open) throws Exception {
        String deep = open.repeat(100_000);
        String answer = answer(signedIn("POST /api/drills", "application/json", "Content-Length: " + deep.length()), deep);
        assertThat(Raw.status(answer)).isEqualTo(400);
        assertThat(answer).contains("\"error\":\"What was sent is not what is asked for here: ");
    }

    @Test
    void aBodyThatBreaksOffIsRefusedInWords() throws Exception {
        String answer = answer(signedIn("POST /api/drills", "application/json", "Content-Length: 900"), "{\"drill\":");
        assertThat(Raw.status(answer)).isEqualTo(400);
        assertThat(answer).contains("did not come whole");
        answer = answer(signedIn("POST /api/import", "application/json", "Content-Length: 900"), "{\"cupbeam_export\":1,\"players\":[");
        assertThat(Raw.status(answer)).isEqualTo(400);
        assertThat(answer).containsPattern("broke off on its way|; give a file that was exported as JSON");
    }

    /** Strangers who send a sign-in byte by byte hold a few threads, and the boards go on. */
    @Test
    void whoeverSignsInSlowlyHoldsUpNobodyElse() throws Exception {
        List<Socket> slow = new ArrayList<>();
        try {
            for (int i = 0; i < SLOW; i++) {
                Socket socket = connected();
                slow.add(socket);
                socket.getOutputStream().write(("POST /api/session HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n"
                        + "Content-Length: 900\r\n\r\n{").getBytes(StandardCharsets.US_ASCII));
            }
            Thread.sleep(500);
            long start = System.nanoTime();
            assertThat(Raw.status(Raw.get(web.port(), "/lanes", "localhost"))).isEqualTo(200);
            assertThat(visit.get("/api/players").statusCode()).isEqualTo(200);
            assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(4));
            assertThat(refusedOf(slow)).as("told to come again").isGreaterThanOrEqualTo(SLOW - 8);
        } finally {
            for (Socket each : slow) {
                each.close();
            }
        }
    }

    /** Strangers who ask for the largest files, and do not read them. */
    @Test
    void whoeverReadsSlowlyHoldsUpNobodyElse() throws Exception {
        List<Socket> slow = new ArrayList<>();
        try {
            for (int i = 0; i < SLOW; i++) {
                Socket socket = new Socket();
                slow.add(socket);
                socket.setReceiveBufferSize(1_024);
                socket.bind(new InetSocketAddress("127.0.0.2", 0)); // another's address
                socket.connect(new InetSocketAddress("127.0.0.1", web.port()));
                socket.getOutputStream().write("GET /fonts/archivo-latin.woff2 HTTP/1.1\r\nHost: localhost\r\n\r\n".repeat(200)
                        .getBytes(StandardCharsets.US_ASCII));
            }
            Thread.sleep(500);
            long start = System.nanoTime();
            assertThat(Raw.status(Raw.get(web.port(), "/lanes", "localhost"))).isEqualTo(200);
            assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(4));
        } finally {
            for (Socket each : slow) {
                each.close();
            }
        }
    }

    private static long refusedOf(List<Socket> slow) throws IOException {
        int refused = 0;
        for (Socket each : slow) {
            each.setSoTimeout(300);
            try {
                refused += start(each).equals("HTTP/1.1 429") ? 1 : 0;
            } catch (SocketTimeoutException stillListenedTo) {
                // One of the few that may.
            }
        }
        return refused;
    }

    private Socket connected() throws IOException {
        Socket socket = new Socket("127.0.0.1", web.port());
        socket.setSoTimeout(5_000);
        return socket;
    }

    private byte[] signedIn(String what, String type, String length) {
        return (what + " HTTP/1.1\r\nHost: localhost\r\nCookie: cupbeam-staff=" + visit.cookie() + "\r\n" + Access.TOKEN_HEADER + ": "
                + visit.token() + "\r\nContent-Type: " + type + "\r\n" + length + "\r\nConnection: close\r\n\r\n")
                .getBytes(StandardCharsets.US_ASCII);
    }

    private String answer(byte[] head, String body) throws IOException {
        try (Socket socket = connected()) {
            socket.getOutputStream().write(head);
            socket.getOutputStream().write(body.getBytes(StandardCharsets.US_ASCII));
            socket.shutdownOutput();
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** The first line up to the status; empty where the connection was closed instead. */
    private static String start(Socket socket) throws IOException {
        try {
            return new String(socket.getInputStream().readNBytes(12), StandardCharsets.US_ASCII);
        } catch (SocketException reset) {
            return "";
        }
    }
}

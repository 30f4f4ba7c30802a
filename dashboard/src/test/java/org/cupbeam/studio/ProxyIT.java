package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import javax.net.ssl.SSLParameters;
import javax.net.ssl.SSLSocket;
import org.cupbeam.event.Topics;
import org.cupbeam.link.Trust;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.web.LiveLanes;
import org.cupbeam.studio.web.WebServer;
import org.cupbeam.studio.web.access.Proxies;
import org.cupbeam.studio.web.access.StaffPin;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A host's pages behind a real nginx, set up as docs/proxy says; callers have loopback addresses of their own. */
@Timeout(60)
class ProxyIT {
    private static final String PIN = "739205";

    @TempDir
    private Path folder;
    private final LiveLanes lanes = new LiveLanes("test");
    private Store store;
    private WebServer web;
    private Nginx nginx;

    @BeforeEach
    void start() throws Exception {
        StaffPin pin = StaffPin.quick(folder.resolve("staff-pin"));
        pin.set(PIN);
        store = Store.open(Database.file(folder.resolve("studio.db")));
        web = new WebServer(store, lanes, pin, Clock.systemDefaultZone(), Proxies.at(List.of("127.0.0.1")))
                .start("127.0.0.1", 0);
        nginx = new Nginx(folder, web.port());
    }

    @AfterEach
    void stop() throws Exception {
        if (nginx != null) {
            nginx.close();
        }
        web.close();
        store.close();
    }

    @Test
    void signsInByTlsAloneAndCountsTriesForEachCaller() throws Exception {
        String here = "https://localhost:" + nginx.tlsPort;
        for (int i = 0; i < 5; i++) {
            assertThat(signIn("127.0.0.2", "wrong-" + i, "X-Forwarded-For: 10.0.0." + i)).startsWith("HTTP/1.1 403");
        }
        assertThat(signIn("127.0.0.2", PIN, "X-Forwarded-For: 10.0.0.9")).as("whatever it writes").startsWith("HTTP/1.1 429");
        assertThat(signIn("127.0.0.3", PIN, "Origin: http://localhost:" + nginx.tlsPort)).startsWith("HTTP/1.1 403");

        String inside = signIn("127.0.0.3", PIN, "Origin: " + here);
        assertThat(inside).as("another caller").startsWith("HTTP/1.1 200").contains("; HttpOnly; SameSite=Strict; Secure")
                .contains("Strict-Transport-Security: max-age=31536000");
        assertThat(plainly("/lanes")).startsWith("HTTP/1.1 301").contains("Location: https://localhost/lanes");
    }

    @Test
    void nobodyBehindItSitsAtTheStudiosComputer() throws Exception {
        String answer = asked("127.0.0.2", "GET /control/home/one HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n");

        assertThat(answer).startsWith("HTTP/1.1 303").contains("Location: /sign-in");
    }

    @Test
    void aBoardHearsEachWordAtOnce() throws Exception {
        Topics topics = new Topics("home", "lane-1");
        try (SSLSocket socket = tls("127.0.0.2")) {
            socket.setSoTimeout(5_000);
            socket.getOutputStream().write(("GET /live/home/lane-1 HTTP/1.1\r\nHost: localhost\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
            BufferedReader lines = new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
            assertThat(next(lines, "content-type")).contains("text/event-stream");
            for (int word = 0; word < 5; word++) {
                long saidNs = System.nanoTime();
                lanes.score(topics, Scenes.free(Scenes.HOLED));
                next(lines, "event: score");
                assertThat(TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - saidNs)).as("ms").isLessThan(2_000);
            }
        }
    }

    private static String next(BufferedReader lines, String begin) throws Exception {
        for (String line; (line = lines.readLine()) != null; ) {
            if (line.toLowerCase(Locale.ROOT).startsWith(begin)) {
                return line;
            }
        }
        throw new AssertionError("the stream ended before " + begin);
    }

    private String signIn(String from, String pin, String header) throws Exception {
        String body = "{\"pin\":\"" + pin + "\"}";
        return asked(from, "POST /api/session HTTP/1.1\r\nHost: localhost:" + nginx.tlsPort + "\r\n" + header
                + "\r\nContent-Type: application/json\r\nConnection: close\r\nContent-Length: " + body.length() + "\r\n\r\n" + body);
    }

    private String asked(String from, String request) throws Exception {
        try (SSLSocket socket = tls(from)) {
            socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** Trusts the one certificate, and holds it to its name. */
    private SSLSocket tls(String from) throws Exception {
        Socket plain = new Socket("127.0.0.1", nginx.tlsPort, InetAddress.getByName(from), 0);
        SSLSocket socket = (SSLSocket) Trust.only(nginx.certificate).createSocket(plain, "localhost", nginx.tlsPort, true);
        SSLParameters strict = socket.getSSLParameters();
        strict.setEndpointIdentificationAlgorithm("HTTPS");
        socket.setSSLParameters(strict);
        return socket;
    }

    private String plainly(String path) throws Exception {
        try (Socket socket = new Socket("127.0.0.1", nginx.plainPort)) {
            socket.getOutputStream().write(("GET " + path + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n")
                    .getBytes(StandardCharsets.US_ASCII));
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}

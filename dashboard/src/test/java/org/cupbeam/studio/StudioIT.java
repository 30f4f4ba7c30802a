package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.cupbeam.event.ScoreJson;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The all-in-one as a process of its own, as whoever starts it sees it. */
@Timeout(120)
class StudioIT {
    private static final long RESIDENT_LIMIT_KB = 200 * 1024;

    @TempDir
    Path folder;
    private Process studio;

    @AfterEach
    void stop() throws Exception {
        if (studio != null) {
            studio.destroyForcibly().waitFor();
        }
    }

    @Test
    void startsSaysWhereItsDataAreStaysSmallAndStopsInTime() throws Exception {
        int port = freePort();
        int mqttPort = freePort();
        studio = start("--port", "" + port, "--mqtt-port", "" + mqttPort, "--data", folder.resolve("data").toString());
        awaitPage(port);
        try (Wire lane = new Wire("tcp://127.0.0.1:" + mqttPort);
             EventStreamReader board = new EventStreamReader(port, "/live/home/lane-1")) {
            for (int i = 1; i <= 200; i++) {
                lane.say("cupbeam/home/lane-1/score", ScoreJson.encode(Scenes.alone("Ada", i, Scenes.MISSED)), true);
            }
            board.await("score");
            for (String page : List.of("/board/home/lane-1", "/css/board.css", "/js/board.js", "/lanes")) {
                assertThat(status(port, page)).as(page).isEqualTo(200);
            }
        }
        long residentKb = residentKb(studio.pid());
        System.out.println("all-in-one, resident: " + residentKb / 1024 + " MB");
        assertThat(residentKb).isLessThan(RESIDENT_LIMIT_KB);

        long beganNs = System.nanoTime();
        studio.destroy();
        assertThat(studio.waitFor(10, TimeUnit.SECONDS)).isTrue();
        assertThat((System.nanoTime() - beganNs) / 1e9).as("seconds to stop").isLessThan(5);
        assertThat(output()).contains("http://localhost:" + port).contains("data in " + folder.resolve("data"))
                .contains("Stopped. The data stay in " + folder.resolve("data"));
    }

    @Test
    void saysWhichPortIsInUseAndWhichOptionChangesIt() throws Exception {
        try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
            String port = "" + taken.getLocalPort();
            studio = start("--port", port, "--mqtt-port", "0", "--data", folder.resolve("data").toString());
            assertThat(studio.waitFor(30, TimeUnit.SECONDS)).isTrue();
            assertThat(studio.exitValue()).isEqualTo(2);
            assertThat(output()).contains("port " + port + " is in use").contains("--port").doesNotContain("\tat ");
        }
    }

    @Test
    void saysThatTheBrokersPortIsInUse() throws Exception {
        try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
            String port = "" + taken.getLocalPort();
            studio = start("--port", "0", "--mqtt-port", port, "--data", folder.resolve("data").toString());
            assertThat(studio.waitFor(30, TimeUnit.SECONDS)).isTrue();
            assertThat(studio.exitValue()).isEqualTo(2);
            assertThat(output()).contains("port " + port + " is in use").contains("--mqtt-port").doesNotContain("\tat ");
        }
    }

    @Test
    void refusesAFolderThatAnotherStudioUses() throws Exception {
        try (DataFolder mine = DataFolder.claim(folder)) {
            studio = start("--port", "0", "--mqtt-port", "0", "--data", mine.path().toString());
            assertThat(studio.waitFor(30, TimeUnit.SECONDS)).isTrue();
            assertThat(studio.exitValue()).isEqualTo(2);
            assertThat(output()).contains("is in use by another studio").contains("--data");
        }
    }

    @Test
    void saysWhatIsWrongWithAStoreThatIsNone() throws Exception {
        Files.writeString(folder.resolve("studio.db"), "this is no database, and long enough to be taken for one\n".repeat(99));
        studio = start("--port", "0", "--mqtt-port", "0", "--data", folder.toString());
        assertThat(studio.waitFor(30, TimeUnit.SECONDS)).isTrue();
        assertThat(studio.exitValue()).isEqualTo(2);
        assertThat(output()).contains("studio.db").contains("--store").doesNotContain("\tat ");
    }

    private Process start(String... options) throws IOException {
        List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC", "-Xmx64m", "-Xss512k", "-XX:TieredStopAtLevel=1", "-cp",
                System.getProperty("java.class.path"), Studio.class.getName()));
        command.addAll(List.of(options));
        return new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(folder.resolve("output").toFile())
                .start();
    }

    private String output() throws IOException {
        return Files.readString(folder.resolve("output"));
    }

    private void awaitPage(int port) throws Exception {
        for (int tries = 0; tries < 300; tries++) {
            try {
                if (status(port, "/lanes") == 200) {
                    return;
                }
            } catch (IOException e) {
                TimeUnit.MILLISECONDS.sleep(100);
            }
        }
        throw new AssertionError("no page; the studio said: " + output());
    }

    private static int status(int port, String path) throws IOException, InterruptedException {
        return HttpClient.newHttpClient().send(HttpRequest.newBuilder(
                URI.create("http://127.0.0.1:" + port + path)).build(), HttpResponse.BodyHandlers.discarding()).statusCode();
    }

    private static int freePort() throws IOException {
        try (ServerSocket free = new ServerSocket(0)) {
            return free.getLocalPort();
        }
    }

    private static long residentKb(long pid) throws IOException {
        return Files.readAllLines(Path.of("/proc/" + pid + "/status")).stream().filter(l -> l.startsWith("VmRSS"))
                .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", ""))).findFirst().orElseThrow();
    }
}

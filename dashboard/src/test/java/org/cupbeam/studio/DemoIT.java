package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.ServerSocket;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** What the demo shows: a duel goes on by itself, from the simulated light beams to the picture on the wall. */
@Timeout(240)
class DemoIT {
    /** Faster than a real green, so that there is something to see soon. */
    private static final String SPEED = "8";

    @TempDir
    private Path folder;

    @Test
    void aDuelGoesOnByItselfAndEveryPuttReachesTheWall() throws Exception {
        int port;
        try (ServerSocket free = new ServerSocket(0)) {
            port = free.getLocalPort();
        }
        Studio studio = new Studio();
        Thread running = new Thread(() -> new CommandLine(studio).execute("--practice", "--speed", SPEED, "--port",
                "" + port, "--mqtt-port", "0", "--data", folder.toString()), "demo");
        running.start();
        try (Browser browser = new Browser()) {
            openWhenThere(browser.size(1920, 1080).calm(), "http://127.0.0.1:" + port + "/board/home/practice");
            browser.await("document.querySelectorAll('#rows svg, #rows li').length > 2", 60);
            browser.await("/Holed|past|short/.test(document.querySelector('#said').innerText)", 60);
            // Enough of a duel to look at: three putts each, at the least.
            browser.await("[...document.querySelectorAll('#rows > li')].every(row => "
                    + "Number(row.innerText.match(/(\\d+)\\s*putts?/)?.[1] ?? 0) >= 3)", 90);
            assertThat(browser.text("#game")).contains("Putter-length ladder");
            assertThat(browser.text("#rows")).contains("Nadia").contains("Tomas");
            assertThat(browser.complaints()).isEmpty();
            browser.screenshot(Pictures.of("board-wall"));
            browser.size(390, 844);
            browser.screenshot(Pictures.of("board-phone"));
        } finally {
            long beganNs = System.nanoTime();
            studio.stop();
            running.join(TimeUnit.SECONDS.toMillis(10));
            assertThat((System.nanoTime() - beganNs) / 1e9).as("seconds to stop").isLessThan(5);
        }
        assertThat(folder.resolve("studio.db")).exists();
        assertThat(folder.resolve("home.practice.db")).exists();
    }

    private static void openWhenThere(Browser browser, String url) throws InterruptedException {
        for (int tries = 0; ; tries++) {
            browser.open(url);
            if (browser.value("!!document.querySelector('#rows')").asBoolean()) {
                return;
            }
            assertThat(tries).as("the page comes").isLessThan(100);
            TimeUnit.MILLISECONDS.sleep(200);
        }
    }
}

package org.cupbeam.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.cupbeam.cli.Cupbeam;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(60)
class OverseerTest {
    private final List<String> told = new ArrayList<>();
    private final Overseer overseer = new Overseer(told::add);

    @Test
    void hearsThatTheServiceIsReadyWellAndEnding() {
        overseer.ready("lane mill/lane-1 is ready");
        overseer.well();
        overseer.stopping();
        assertThat(told).containsExactly("READY=1\nSTATUS=lane mill/lane-1 is ready", "WATCHDOG=1", "STOPPING=1");
    }

    @Test
    void aStatusCannotSayAnythingElse() {
        overseer.ready("Ana\nMAINPID=1\u0000" + "a".repeat(1_000));
        assertThat(told).singleElement().satisfies(line -> {
            assertThat(line).startsWith("READY=1\nSTATUS=Ana MAINPID=1 aaa").hasSizeLessThan(250);
            assertThat(line.lines()).hasSize(2);
        });
    }

    @Test
    void whereNobodyWantsToBeToldNothingIsLoaded() {
        Overseer.of(Map.of("NOTIFY_SOCKET", "")).ready("ready");
        Overseer.of(Map.of()).well();
    }

    /** A socket of our own in systemd's place, with systemd's own library at the other end of it. */
    @Test
    void theLaneCommandTellsItByTheSocketThatItIsGiven(@TempDir Path folder) throws Exception {
        Path rig = Path.of("..", "hardware-notes", "rigs", "full.toml");
        try (NotifySocket socket = NotifySocket.at(folder.resolve("notify"))) {
            ProcessBuilder lane = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                    "-cp", System.getProperty("java.class.path"), Cupbeam.class.getName(), "lane", "--rig", rig.toString(),
                    "--practice", "--data", folder.toString(), "--broker", "tcp://127.0.0.1:9");
            lane.environment().put("NOTIFY_SOCKET", socket.path().toString());
            Process process = lane.redirectErrorStream(true).redirectOutput(folder.resolve("log").toFile()).start();
            try {
                assertThat(socket.next()).startsWith("READY=1\nSTATUS=lane home/lane-1 is ready");
                assertThat(socket.next()).isEqualTo("WATCHDOG=1");
                process.destroy();
                assertThat(socket.nextBut("WATCHDOG=1")).isEqualTo("STOPPING=1");
                assertThat(process.waitFor(20, TimeUnit.SECONDS)).isTrue();
            } finally {
                process.destroyForcibly().waitFor();
            }
        }
    }
}

package org.cupbeam.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.concurrent.TimeUnit;
import org.cupbeam.event.Command;
import org.cupbeam.event.Health;
import org.cupbeam.event.Score;
import org.cupbeam.lane.Refereed;
import org.cupbeam.lane.Studio;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The lane command as whoever runs it, or its machine's power, treats it. */
@Timeout(120)
class LaneIT {
    private static final String RIG = """
            [green]
            stimp_ft = 10
            uphill_percent = 0
            [overshoot]
            limit_mm = 914.4
            [cup]
            gpio = 17
            [[beam]]
            name = "before-1"
            gpio = 22
            position_mm = -300
            height_mm = 21
            [[beam]]
            name = "before-2"
            gpio = 23
            position_mm = -240
            height_mm = 21
            """;
    private static final String DRILL = """
            name = "three and on"
            [stations]
            at_mm = [900, 1800, 2700, 3600]
            [balls]
            count = 3
            supply = "every-station"
            [advance]
            holed = 1
            [overshoot]
            limit_mm = 400
            penalty = "back-one"
            """;

    @TempDir
    private Path folder;
    private final List<Process> processes = new ArrayList<>();
    private Studio studio;

    @BeforeEach
    void furnish() throws Exception {
        Files.writeString(folder.resolve("rig.toml"), RIG);
        Files.writeString(folder.resolve("drill.toml"), DRILL);
        studio = new Studio();
    }

    @AfterEach
    void clear() throws Exception {
        for (Process each : processes) {
            each.destroyForcibly().waitFor(10, TimeUnit.SECONDS);
        }
        studio.close();
    }

    private Process lane(String... more) throws IOException {
        List<String> arguments = new ArrayList<>(List.of("lane", "--rig", folder.resolve("rig.toml").toString(),
                "--practice", "--studio", "north", "--lane", "bay-3", "--data", folder.resolve("data").toString(),
                "--broker", studio.uri()));
        arguments.addAll(List.of(more));
        Process process = new ProcessBuilder(Jar.command(arguments.toArray(String[]::new)))
                .redirectOutput(folder.resolve("out").toFile()).start();
        processes.add(process);
        return process;
    }

    private Process playing() throws IOException {
        return lane("--speed", "60", "--drill", folder.resolve("drill.toml").toString(), "--players", "Ana,Bo");
    }

    private static String ready(Process lane) throws IOException {
        BufferedReader err = lane.errorReader();
        StringBuilder all = new StringBuilder();
        for (String line; (line = err.readLine()) != null; ) {
            all.append(line).append('\n');
            if (line.contains(" is ready")) {
                return line;
            }
        }
        throw new AssertionError("never ready: " + all);
    }

    @Test
    void aLaneThatIsKilledInMidRunLosesAndRepeatsNothingAndGoesOnInTheSameRun() throws Exception {
        studio.open();
        for (int life = 0; life < 4; life++) {
            Process lane = playing();
            ready(lane);
            int before = studio.count();
            Studio.until("some more putts", () -> studio.count() >= before + 7);
            lane.toHandle().destroyForcibly();
            assertThat(lane.waitFor(10, TimeUnit.SECONDS)).isTrue();
            assertThat(lane.exitValue()).as("by signal 9").isEqualTo(128 + 9);
        }
        Process last = playing();
        ready(last);
        int before = studio.count();
        Studio.until("a few more putts", () -> studio.count() >= before + 3);
        end(last);

        assertThat(studio.complaints).isEmpty();
        assertThat(Refereed.attempts(studio.heard())).isGreaterThan(20);
        assertThat(studio.scores).extracting(Score::sequence).isSorted();
    }

    @Test
    void aBrokerThatIsAwayAtFirstIsWaitedForAndHearsEverything() throws Exception {
        Process lane = playing();
        assertThat(ready(lane)).startsWith("cupbeam: lane north/bay-3 is ready, Ana putts from 900 mm; its data is in "
                + folder.resolve("data"));
        Path log = folder.resolve("data").resolve("north.bay-3.db-wal");
        Studio.until("it plays on by itself", () -> Files.size(log) > 50_000);
        studio.open();
        Studio.until("the events come", () -> studio.count() > 5);
        assertThat(studio.events.firstKey()).isEqualTo(1);

        end(lane);
        Studio.until("it says goodbye", () -> studio.healths.get(studio.healths.size() - 1).state()
                == Health.State.OFFLINE);
    }

    @Test
    void aDrillIsStartedByCommandAndAnswered() throws Exception {
        studio.open();
        Process lane = lane();
        assertThat(ready(lane)).contains("nothing is played");
        Studio.until("it is online", () -> !studio.healths.isEmpty());
        studio.ask(new Command("c-1", "Jo", OptionalLong.empty(), new Command.Pass()));
        Studio.until("an answer", () -> !studio.answers.isEmpty());

        assertThat(studio.answers.get(0).accepted()).isFalse();
        assertThat(studio.answers.get(0).reason()).isEqualTo("no drill is on: start one");
        end(lane);
    }

    private static void end(Process lane) throws InterruptedException {
        long from = System.nanoTime();
        lane.destroy();
        assertThat(lane.waitFor(10, TimeUnit.SECONDS)).isTrue();
        assertThat(System.nanoTime() - from).as("ns to end").isLessThan(2_000_000_000L);
    }

    @Test
    void nonsenseIsRefusedWithStatusTwoAndNothingIsBegun() throws Exception {
        Files.writeString(folder.resolve("bad.toml"), RIG.replace("stimp_ft = 10", "stimp_ft = 100"));
        assertRefused("bad.toml:2", "--rig", folder.resolve("bad.toml").toString());
        String rig = folder.resolve("rig.toml").toString();
        assertRefused("--studio, --lane:", "--rig", rig, "--studio", "Nordstern!");
        assertRefused("--broker:", "--rig", rig, "--broker", "localhost");
        assertRefused("--players: nobody plays without a drill", "--rig", rig, "--players", "Ana");
        assertRefused("--players: a name is there twice", "--rig", rig, "--drill",
                folder.resolve("drill.toml").toString(), "--players", "Ana,Ana");
        assertRefused("--speed:", "--rig", rig, "--speed", "3");
        assertRefused("--from: is a place in a trace", "--rig", rig, "--practice", "--from", "3");
        assertRefused("--trace: the edges come from one place", "--rig", rig, "--practice", "--trace", rig);
        assertRefused("rig.toml:", "--rig", rig, "--trace", rig);
        assertRefused("no such file", "--rig", folder.resolve("none.toml").toString());
    }

    private void assertRefused(String message, String... options) throws Exception {
        List<String> arguments = new ArrayList<>(List.of("lane", "--data", folder.resolve("data").toString()));
        arguments.addAll(List.of(options));
        Jar.Outcome outcome = Jar.run(folder, arguments.toArray(String[]::new));
        assertThat(outcome.err()).contains(message).doesNotContain("\tat ");
        assertThat(outcome.status()).isEqualTo(2);
        assertThat(folder.resolve("data")).doesNotExist();
    }

    @Test
    void withoutABoardItSaysSoAndWhatWouldDo() throws Exception {
        Jar.Outcome outcome = Jar.run(folder, "lane", "--data", folder.resolve("data").toString(), "--rig",
                folder.resolve("rig.toml").toString());
        assertThat(outcome.status()).isEqualTo(1);
        assertThat(outcome.err()).contains("--practice").doesNotContain("\tat ");
    }
}

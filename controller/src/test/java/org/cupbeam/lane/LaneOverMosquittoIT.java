package org.cupbeam.lane;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;
import java.util.concurrent.TimeUnit;
import org.cupbeam.Outside;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.edge.EdgeSource;
import org.cupbeam.event.Command;
import org.cupbeam.event.Data;
import org.cupbeam.event.Health;
import org.cupbeam.event.Score;
import org.cupbeam.link.LinkOptions;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A lane on its own threads, with a real disk and a real broker. */
@Timeout(120)
class LaneOverMosquittoIT {
    @TempDir
    private Path folder;
    private Process mosquitto;
    private Studio studio;
    private Lane lane;
    private final Hand hand = new Hand();

    /** Edges as they are made by hand. */
    private static final class Hand implements EdgeSource {
        private EdgeSink sink;

        @Override
        public void start(EdgeSink edges) {
            sink = edges;
        }

        void drop() {
            sink.edge(SteppedLane.CUP, true, System.nanoTime() - 20_000_000);
            sink.edge(SteppedLane.CUP, false, System.nanoTime());
        }

        @Override
        public void close() {
        }
    }

    @BeforeEach
    void open() throws Exception {
        int port;
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = free.getLocalPort();
        }
        Path settings = Files.write(folder.resolve("mosquitto.conf"),
                List.of("listener " + port + " 127.0.0.1", "allow_anonymous true", "persistence false"));
        mosquitto = new ProcessBuilder(Outside.program("mosquitto"), "-c", settings.toString())
                .redirectErrorStream(true).redirectOutput(folder.resolve("mosquitto.out").toFile()).start();
        Studio.until("mosquitto listens", () -> listens(port));
        studio = new Studio("tcp://127.0.0.1:" + port);
        studio.listen();
        lane = Lane.open(LaneSettings.of(SteppedLane.TOPICS, SteppedLane.rig(), folder.resolve("data/lane.db")),
                Surroundings.ofThisMachine("test"), LinkOptions.open(studio.uri()));
        lane.start(hand);
        Studio.until("the lane is online", () -> !studio.healths.isEmpty());
    }

    private static boolean listens(int port) {
        try (Socket knock = new Socket(InetAddress.getLoopbackAddress(), port)) {
            return knock.isConnected();
        } catch (IOException notYet) {
            return false;
        }
    }

    @AfterEach
    void close() throws Exception {
        mosquitto.destroyForcibly().waitFor(10, TimeUnit.SECONDS);
        lane.close();
        studio.close();
    }

    @Test
    void aDropIsAnEventAndThenTheScoreAndACommandIsAnswered() throws Exception {
        studio.ask(new Command("c-1", "Jo", OptionalLong.of(0),
                new Command.Start(SteppedLane.ladder(3, 2), List.of("Ana"), SteppedLane.TAGS)));
        Studio.until("an answer", () -> studio.answers.size() == 1);
        assertThat(studio.answers.get(0).accepted()).isTrue();
        hand.drop();
        Studio.until("the score", () -> studio.scores.get(studio.scores.size() - 1).sequence() == 2);

        assertThat(studio.heard().get(1).data()).isInstanceOf(Data.Attempt.class);
        assertThat(studio.scores).extracting(Score::sequence).containsExactly(0L, 1L, 2L);
        assertThat(lane.upNext()).isEqualTo(new UpNext("Ana", 1500));
        assertThat(studio.complaints).isEmpty();
    }

    @Test
    void aLaneThatIsClosedSaysGoodbye() throws Exception {
        lane.close();
        Studio.until("goodbye", () -> studio.healths.get(studio.healths.size() - 1).state() == Health.State.OFFLINE);
    }

    @Test
    void aBrokerThatHangsIsNotWaitedForAtTheEnd() throws Exception {
        assertThat(new ProcessBuilder("kill", "-STOP", Long.toString(mosquitto.pid())).start().waitFor()).isZero();
        hand.drop();
        long from = System.nanoTime();
        lane.close();

        assertThat(System.nanoTime() - from).as("ns to close").isLessThan(2_000_000_000L);
        assertThat(folder.resolve("data/lane.db")).isNotEmptyFile();
    }
}

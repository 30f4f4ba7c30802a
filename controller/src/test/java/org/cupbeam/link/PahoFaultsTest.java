package org.cupbeam.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.net.BindException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Command;
import org.cupbeam.event.CommandJson;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The link over the real Paho client, against a broker that brings out each of that client's known faults. */
@Timeout(60)
class PahoFaultsTest {
    private final FakeOutbox outbox = new FakeOutbox();
    private final List<Command> commands = Collections.synchronizedList(new ArrayList<>());
    private StubBroker broker;
    private Link link;

    @BeforeEach
    void open() throws IOException {
        broker = new StubBroker(StubBroker.freePort());
    }

    @AfterEach
    void close() throws IOException {
        if (link != null) {
            link.close();
        }
        broker.close();
    }

    private void start(String uri, Predicate<Command> lane) {
        link = new Link(LinkOptions.open(uri), Lane.TOPICS, "boot", outbox, System::nanoTime, new Random(1), lane);
        link.health(Lane.report());
        link.start();
    }

    private void startOnline() throws Exception {
        start(broker.uri(), commands::add);
        Patience.until("online", link::online);
    }

    private static StubBroker.Published command(int number) {
        return new StubBroker.Published("cupbeam/north/bay-3/command", CommandJson.encode(
                new Command("c-" + number, "Jo", OptionalLong.empty(), new Command.Pass())));
    }

    @Test
    void moreEventsThanPahoTakesAtOnceAllArriveInOrder() throws Exception {
        outbox.last = 200;
        broker.acknowledges = false;
        startOnline();
        Patience.until("eight under way", () -> broker.texts("/event").size() == 8);
        Patience.stays("no ninth before an acknowledgement", 300, () -> broker.texts("/event").size() == 8);
        broker.acknowledgeAll();
        Patience.until("all", () -> broker.texts("/event").size() >= 200);
        assertThat(broker.texts("/event")).isEqualTo(
                LongStream.rangeClosed(1, 200).mapToObj(Long::toString).toList());
        assertThat(broker.connects).isEqualTo(1);
        assertThat(link.trouble()).isNull();
    }

    @Test
    void fortyMessagesThatWaitAtTheSubscriptionAreAllHeard() throws Exception {
        broker.beforeSubscribed = IntStream.range(0, 40).mapToObj(PahoFaultsTest::command).toList();
        startOnline();
        Patience.until("all heard", () -> commands.size() == 40);
        Patience.until("all acknowledged", () -> broker.acknowledgedByClient.size() == 40);
        assertThat(broker.connects).isEqualTo(1);
    }

    @Test
    void aBurstOfSixtyCommandsIsAnsweredWhole() throws Exception {
        start(broker.uri(), command -> {
            link.answer(new Answer(command.id(), true, null, 1));
            return true;
        });
        Patience.until("online", link::online);
        for (int i = 0; i < 60; i++) {
            broker.send(command(i));
        }
        Patience.until("sixty answers", () -> broker.texts("/answer").size() == 60);
        assertThat(broker.connects).isEqualTo(1);
    }

    @Test
    void messagesThatMakeNoSenseNeitherBreakTheConnectionNorComeBack() throws Exception {
        startOnline();
        List<byte[]> senseless = List.of(new byte[0], new byte[] {(byte) 0xff, 0, (byte) 0xc3},
                "null".getBytes(StandardCharsets.UTF_8), new byte[70_000], "{\"id\":{}}".getBytes(StandardCharsets.UTF_8));
        for (byte[] each : senseless) {
            broker.send(new StubBroker.Published("cupbeam/north/bay-3/stored", each));
            broker.send(new StubBroker.Published("cupbeam/north/bay-3/command", each));
            broker.send(new StubBroker.Published("cupbeam/north/bay-3/health", each));
            broker.send(new StubBroker.Published("another/topic", each));
        }
        broker.send(command(1));
        Patience.until("the one that makes sense", () -> commands.size() == 1);
        Patience.until("each acknowledged once", () -> broker.acknowledgedByClient.size() == 21);
        assertThat(broker.acknowledgedByClient).doesNotHaveDuplicates();
        assertThat(broker.connects).isEqualTo(1);
        assertThat(link.online()).isTrue();
    }

    @Test
    void aLaneThatFailsOnACommandDoesNotBreakTheConnection() throws Exception {
        start(broker.uri(), command -> {
            if (command.id().equals("c-0")) {
                throw new IllegalStateException("a fault of the lane's");
            }
            return commands.add(command);
        });
        Patience.until("online", link::online);
        broker.send(command(0));
        broker.send(command(1));
        Patience.until("the next", () -> commands.size() == 1);
        assertThat(broker.connects).isEqualTo(1);
    }

    @Test
    void whoeverDoesNotListenDoesNotHoldUpTheBroker() throws Exception {
        PahoWire wire = connected();
        for (int i = 0; i < 2000; i++) {
            broker.send(command(i));
        }
        Patience.until("all acknowledged", () -> broker.acknowledgedByClient.size() == 2000);
        wire.publish(7, new Wire.Message("t", new byte[1], false));
        Patience.until("an acknowledgement is heard all the same",
                () -> wire.next() instanceof Wire.News.Acknowledged acknowledged && acknowledged.tag() == 7);
        assertThat(wire.overrun()).isEqualTo(2000 - 128);
        wire.close();
    }

    private PahoWire connected() throws Exception {
        PahoWire wire = new PahoWire(LinkOptions.open(broker.uri()), "client", () -> { });
        wire.connect(new Wire.Message("will", new byte[0], true));
        Patience.until("connected", () -> wire.next() instanceof Wire.News.Connected);
        return wire;
    }

    @Test
    void filesThatPahoOnceLeftBehindDoNotKeepItFromStartingAndItLeavesNone() throws Exception {
        String client = "cupbeam-north-bay-3";
        Path left = Path.of(System.getProperty("user.dir"), client + "-" + broker.uri().replaceAll("[/:]", ""));
        Files.createDirectories(left);
        Path spoiled = Files.write(left.resolve("s-1.msg"), new byte[64]);
        try {
            startOnline();
            outbox.last = 20;
            link.wake();
            Patience.until("sent", () -> broker.texts("/event").size() == 20);
            assertThat(spoiled).hasBinaryContent(new byte[64]);
            try (Stream<Path> files = Files.list(left)) {
                assertThat(files).containsExactly(spoiled);
            }
        } finally {
            Files.delete(spoiled);
            Files.delete(left);
        }
        try (Stream<Path> files = Files.list(Path.of(System.getProperty("user.dir")))) {
            assertThat(files).noneMatch(each -> each.getFileName().toString().startsWith(client));
        }
    }

    @Test
    void aBrokerThatIsNotThereAtFirstIsFoundWhenItComes() throws Exception {
        int port = StubBroker.freePort();
        start("tcp://127.0.0.1:" + port, commands::add);
        Patience.until("it says why", () -> String.valueOf(link.trouble()).contains("Connection refused"));
        try (StubBroker late = new StubBroker(port)) {
            Patience.until("online", link::online);
            assertThat(late.connects).isEqualTo(1);
        }
    }

    @Test
    void aBrokerThatIsAwayKeepsNobodyBusy() throws Exception {
        start("tcp://127.0.0.1:" + StubBroker.freePort(), commands::add);
        Patience.until("tried", () -> String.valueOf(link.trouble()).contains("refused"));
        long before = cpuNsOfLink();
        Patience.stays("away", 2000, () -> !link.online());
        assertThat((cpuNsOfLink() - before) / 1e6).as("ms of CPU in 2 s").isLessThan(400);
    }

    private static long cpuNsOfLink() {
        long id = Thread.getAllStackTraces().keySet().stream().filter(each -> each.getName().equals("link"))
                .findAny().orElseThrow().getId();
        return ManagementFactory.getThreadMXBean().getThreadCpuTime(id);
    }

    @Test
    void connectionsThatFailOrAreGivenUpLeaveNoThreadBehind() throws Exception {
        int before = pahoThreads();
        for (int i = 0; i < 8; i++) {
            PahoWire refused = new PahoWire(LinkOptions.open("tcp://127.0.0.1:" + StubBroker.freePort()), "c", () -> { });
            refused.connect(new Wire.Message("will", new byte[0], true));
            Patience.until("refused", () -> refused.next() instanceof Wire.News.Failed);
            refused.drop();
            broker.silent = i % 2 == 0;
            int connects = broker.connects;
            PahoWire stuck = new PahoWire(LinkOptions.open(broker.uri()), "c", () -> { });
            stuck.connect(new Wire.Message("will", new byte[0], true));
            Patience.until("asked", () -> broker.connects > connects);
            stuck.drop();
            assertThat(stuck.next()).isNull();
        }
        Patience.until("no thread of Paho's is left", () -> pahoThreads() <= before);
    }

    private static int pahoThreads() {
        return (int) Thread.getAllStackTraces().keySet().stream()
                .filter(each -> each.getName().startsWith("MQTT")).count();
    }

    @Test
    void aConnectionThatBreaksIsMadeAgainWithASubscription() throws Exception {
        startOnline();
        outbox.last = 3;
        link.wake();
        Patience.until("sent", () -> broker.texts("/event").size() == 3);
        int port = Integer.parseInt(broker.uri().replaceAll(".*:", ""));
        broker.close();
        Patience.until("noticed", () -> !link.online());
        Patience.until("its port is to be had again", () -> opened(port));
        Patience.until("back", link::online);
        Patience.until("sent again, since the host has not said it stored them",
                () -> broker.texts("/event").size() == 3);
        broker.send(command(1));
        Patience.until("hears again", () -> commands.size() == 1);
    }

    /** Not while a connection to the closed one is not quite gone. */
    private boolean opened(int port) throws IOException {
        try {
            broker = new StubBroker(port);
            return true;
        } catch (BindException e) {
            return false;
        }
    }

    @Test
    void whatABrokerDoesNotAllowIsSaid() throws Exception {
        broker.connectCode = 5;
        start(broker.uri(), commands::add);
        Patience.until("it says why", () -> String.valueOf(link.trouble()).contains("Not authorized"));
        link.close();
        broker.connectCode = 0;
        broker.grants = 0x80;
        start(broker.uri(), commands::add);
        Patience.until("it says why", () -> String.valueOf(link.trouble()).contains("does not let us subscribe"));
    }
}

package org.cupbeam.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.OptionalLong;
import java.util.Random;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.LongStream;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Command;
import org.cupbeam.event.Data;
import org.cupbeam.event.Health;
import org.cupbeam.event.HealthJson;
import org.cupbeam.event.Samples;
import org.cupbeam.event.ScoreJson;
import org.cupbeam.event.Stamp;
import org.cupbeam.journal.Entry;
import org.cupbeam.journal.InputCodec;
import org.cupbeam.journal.Journal;
import org.cupbeam.journal.JournalException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What a link with a real journal owes its studio over any real broker. */
@Timeout(120)
abstract class LinkContract {
    @TempDir
    Path folder;
    Broker broker;
    private Journal<String> journal;
    private Link link;
    private Host host;

    abstract Broker broker() throws Exception;

    /** Whether the broker marks what it had kept when it hands it to a new subscriber, as the standard asks. */
    boolean marksRetained() {
        return true;
    }

    @BeforeEach
    void open() throws Exception {
        broker = broker();
        journal = Journal.open(folder.resolve("journal.db"), "north", "bay-3", new Texts(), Lane.NOW);
    }

    @AfterEach
    void close() throws Exception {
        if (link != null) {
            link.close();
        }
        if (host != null) {
            host.close();
        }
        if (journal != null) {
            journal.close();
        }
        if (broker != null) {
            broker.close();
        }
    }

    private void startLink() {
        link = new Link(LinkOptions.open(broker.uri()), Lane.TOPICS, "boot", journal, System::nanoTime, new Random(1),
                command -> {
                    link.answer(new Answer(command.id(), true, null, journal.last()));
                    return true;
                });
        link.health(Lane.report());
        link.start();
    }

    private void startAll() throws Exception {
        broker.start();
        host = new Host(broker.uri());
        Patience.until("host is there", host::connected);
        startLink();
        Patience.until("online", () -> host.lastState() == Health.State.ONLINE);
    }

    private void append() throws JournalException {
        journal.append(Entry.<String>empty().with(Lane.NOW,
                new Data.Clock(new Stamp("boot", 1, Stamp.Clock.SYNCHRONISED), Lane.NOW)));
        link.wake();
    }

    @Test
    void everyEventIsStoredOnceAndInOrderThoughTheBrokerIsKilledTwiceInMidStream() throws Exception {
        startAll();
        for (int i = 1; i <= 600; i++) {
            append();
            if (i == 200 || i == 400) {
                Patience.until("online", link::online);
                broker.kill();
                Patience.until("noticed", () -> !link.online());
            }
            if (i == 250 || i == 450) {
                broker.start();
            }
            LockSupport.parkNanos(2_000_000);
        }
        Patience.until("the lane knows that all is stored", () -> journal.stored() == 600);
        assertThat(host.stored).containsExactlyElementsOf(LongStream.rangeClosed(1, 600).boxed().toList());
        assertThat(link.connection()).as("one before, between and after").isGreaterThanOrEqualTo(3);
    }

    @Test
    void aBrokerThatComesLateGetsAllThatHappenedBefore() throws Exception {
        startLink();
        for (int i = 0; i < 100; i++) {
            append();
        }
        link.score(Lane.score(99));
        link.score(Lane.score(100));
        Patience.until("it says why", () -> link.trouble() != null && link.trouble().contains("refused"));
        broker.start();
        host = new Host(broker.uri());
        Patience.until("all there", () -> host.arrived.size() == 100);
        Patience.until("the score", () -> host.latest.containsKey("score"));
        assertThat(ScoreJson.decode(host.latest.get("score").getPayload())).isEqualTo(Lane.score(100));
    }

    @Test
    void whoeverComesLaterFindsScoreAndHealthKeptByTheBroker() throws Exception {
        startAll();
        link.score(Lane.score(0));
        Patience.until("score", () -> host.latest.containsKey("score"));
        try (Host later = new Host(broker.uri())) {
            Patience.until("both", () -> later.latest.containsKey("score") && later.latest.containsKey("health"));
            assertThat(later.latest.get("score").isRetained()).isEqualTo(marksRetained());
            assertThat(later.latest.get("health").isRetained()).isEqualTo(marksRetained());
            assertThat(later.arrived).isEmpty();
        }
    }

    @Test
    void aLaneThatTakesLeaveIsOfflineAndNotLost() throws Exception {
        startAll();
        link.close();
        Patience.until("offline", () -> host.lastState() == Health.State.OFFLINE);
        Patience.stays("and not lost", 300, () -> host.lastState() == Health.State.OFFLINE);
    }

    @Test
    void aLaneThatIsCutOffIsLostUnderTheNumberOfItsConnection() throws Exception {
        broker.start();
        host = new Host(broker.uri());
        Patience.until("host is there", host::connected);
        PahoWire wire = new PahoWire(LinkOptions.open(broker.uri()), "cut", () -> { });
        Health will = new Health(Health.State.LOST, 17, "boot", null);
        wire.connect(new Wire.Message(Lane.TOPICS.health(), HealthJson.encode(will), true));
        Patience.until("connected", () -> wire.next() instanceof Wire.News.Connected);
        wire.drop();
        Patience.until("lost", () -> host.healths.contains(will));
        startLink();
        Patience.until("the lane's own word stands in the end", () -> host.lastState() == Health.State.ONLINE);
        wire.close();
    }

    @Test
    void aLateWillIsSetRightAtOnce() throws Exception {
        startAll();
        Health late = new Health(Health.State.LOST, 0, "boot", null);
        PahoWire wire = new PahoWire(LinkOptions.open(broker.uri()), "late", () -> { });
        wire.connect(new Wire.Message(Lane.TOPICS.health(), HealthJson.encode(late), true));
        Patience.until("connected", () -> wire.next() instanceof Wire.News.Connected);
        wire.drop();
        Patience.until("it came", () -> host.healths.contains(late));
        Patience.until("and was set right", () -> host.lastState() == Health.State.ONLINE);
        wire.close();
    }

    @Test
    void commandsAreAnswered() throws Exception {
        startAll();
        for (int i = 0; i < 50; i++) {
            host.command(new Command("c-" + i, "Jo", OptionalLong.empty(), new Command.Pass()));
        }
        Patience.until("fifty answers", () -> host.answers.size() == 50);
    }

    @Test
    void aLargeScoreGoesThrough() throws Exception {
        startAll();
        var large = Samples.score(8, 60);
        link.score(large);
        Patience.until("it comes", () -> host.latest.containsKey("score"));
        assertThat(ScoreJson.decode(host.latest.get("score").getPayload())).isEqualTo(large);
    }

    private static final class Texts implements InputCodec<String> {
        @Override
        public String encode(String input) {
            return input;
        }

        @Override
        public String decode(String text) {
            return text;
        }
    }
}

package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.cupbeam.event.Answer;
import org.cupbeam.event.Health;
import org.cupbeam.event.Score;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.ingest.Ingest;
import org.cupbeam.studio.ingest.News;
import org.cupbeam.studio.ingest.PahoConnection;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Keeper;
import org.cupbeam.studio.store.Store;
import org.eclipse.paho.client.mqttv3.IMqttActionListener;
import org.eclipse.paho.client.mqttv3.IMqttToken;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** How many events a second get from a publisher through a broker into SQLite, each once and synced. */
@Timeout(180)
class IngestRateIT {
    private static final int LANES = 10;
    private static final int EACH = 2_500;
    private static final int WARM_UP = 5_000;
    private static final int BAR_PER_S = 3_000;
    private static final int IN_FLIGHT = 200;

    @TempDir
    Path folder;
    private final AtomicInteger stored = new AtomicInteger();

    @ParameterizedTest
    @MethodSource("org.cupbeam.studio.Brokers#both")
    void keepsThreeThousandEventsASecond(Brokers.Kind kind) throws Exception {
        try (Brokers.Running broker = kind.start(0); Store store = Store.open(Database.file(folder.resolve("s.db")));
             Ingest ingest = new Ingest(new PahoConnection(broker.uri(), "host"), new Keeper(store), new Nobody(),
                     arrivals -> stored.addAndGet(arrivals.size()), Clock.systemUTC(), System::nanoTime, new Random())) {
            ingest.start();
            await(() -> ingest.connected());
            Thread publisher = new Thread(() -> publish(broker.uri()));
            publisher.start();
            await(() -> stored.get() >= WARM_UP);
            long beganNs = System.nanoTime();
            int before = stored.get();
            await(() -> stored.get() >= LANES * EACH);
            double perS = (stored.get() - before) / ((System.nanoTime() - beganNs) / 1e9);
            publisher.join();
            System.out.printf("events stored once, a second: %.0f%n", perS);
            int count = store.read(h -> h.createQuery("SELECT count(*) FROM event").mapTo(Integer.class).one());
            assertThat(count).isEqualTo(LANES * EACH);
            double load = ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage();
            Assumptions.assumeTrue(perS >= BAR_PER_S || load < 2 * Runtime.getRuntime().availableProcessors(),
                    "the machine is busy with something else (load " + load + "): " + perS + " a second say nothing");
            assertThat(perS).isGreaterThanOrEqualTo(BAR_PER_S);
        }
    }

    private static void publish(String uri) {
        try {
            MqttAsyncClient client = new MqttAsyncClient(uri, "lanes", new MemoryPersistence());
            MqttConnectOptions options = new MqttConnectOptions();
            options.setMaxInflight(10 * IN_FLIGHT);
            client.connect(options).waitForCompletion(10_000);
            Semaphore window = new Semaphore(IN_FLIGHT);
            List<ScriptedLane> lanes = new ArrayList<>();
            for (int i = 0; i < LANES; i++) {
                lanes.add(new ScriptedLane("lane-" + i, "j" + i));
            }
            for (int i = 0; i < EACH; i++) {
                for (ScriptedLane lane : lanes) {
                    window.acquire();
                    byte[] json = ScriptedLane.json(lane.passes(20).misses("r" + i / 20, null, "Ada", 1 + i % 9, 300 + i));
                    client.publish(lane.topic(), json, 1, false, null, new Releasing(window));
                }
            }
            window.acquire(IN_FLIGHT);
            client.disconnectForcibly(0, 1_000);
            client.close(true);
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    private interface Condition {
        boolean holds();
    }

    private static void await(Condition condition) throws InterruptedException {
        long untilNs = System.nanoTime() + TimeUnit.SECONDS.toNanos(120);
        while (!condition.holds()) {
            if (System.nanoTime() > untilNs) {
                throw new AssertionError("not within two minutes");
            }
            TimeUnit.MILLISECONDS.sleep(5);
        }
    }

    private record Releasing(Semaphore window) implements IMqttActionListener {
        @Override
        public void onSuccess(IMqttToken token) {
            window.release();
        }

        @Override
        public void onFailure(IMqttToken token, Throwable why) {
            window.release();
        }
    }

    private static final class Nobody implements News.Reader {
        @Override
        public void score(Topics lane, Score score) {
        }

        @Override
        public void health(Topics lane, Health health) {
        }

        @Override
        public void answer(Topics lane, Answer answer) {
        }
    }
}

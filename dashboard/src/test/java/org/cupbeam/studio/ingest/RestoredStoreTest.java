package org.cupbeam.studio.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.IntStream;
import org.cupbeam.event.Event;
import org.cupbeam.event.StoredJson;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Keeper;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.upkeep.Checkup;
import org.cupbeam.studio.store.upkeep.Copies;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** After an older store was restored its lanes are asked again, and what a lane holds no more does not hold up the rest. */
class RestoredStoreTest {
    private final ScriptedLane lane = new ScriptedLane("bay-1", "j1");
    private final List<Event> said = IntStream.range(0, 300).mapToObj(i -> lane.passes(30).puttsOutsideAnyRun()).toList();
    private final AtomicLong nowNs = new AtomicLong();
    private final List<Message> told = new ArrayList<>();
    @TempDir
    private Path folder;

    private Intake host(Store store) {
        Keeper keeper = new Keeper(store);
        return new Intake(() -> keeper, Patience.WITH_LANES, told::add, kept -> { }, Clock.systemUTC(), nowNs::get);
    }

    private void send(Intake host, int from, int to) throws InterruptedException {
        for (Event each : said.subList(from - 1, to)) {
            host.offer(Message.of(lane.topic(), ScriptedLane.json(each)));
        }
        while (host.step(0)) {
            nowNs.addAndGet(1_000);
        }
    }

    private long stored() throws Exception {
        return StoredJson.decode(told.get(told.size() - 1).payload()).sequence();
    }

    @Test
    void theLaneIsToldAnOlderNumberAndWhatItHoldsNoMoreIsNotedAsMissing() throws Exception {
        Path file = folder.resolve("studio.db");
        Path copy = folder.resolve("copy.db");
        try (Store store = Store.open(Database.file(file))) {
            Intake host = host(store);
            send(host, 1, 60);
            Copies.backup(file, copy);
            send(host, 61, 200);
            assertThat(stored()).isEqualTo(200);
        }
        Copies.restore(copy, file, Clock.fixed(Instant.EPOCH, Clock.systemUTC().getZone()));
        try (Store store = Store.open(Database.file(file))) {
            Intake host = host(store);
            host.sayAllAgain();
            host.step(0);
            assertThat(stored()).as("goes back").isEqualTo(60);
            for (int times = 0; times < 4; times++) { // all that the lane still holds, again and again
                send(host, 101, 220);
                nowNs.addAndGet(Patience.WITH_LANES.later().toNanos() / 2);
            }
            send(host, 101, 300);
            assertThat(stored()).isEqualTo(300);
        }
        Checkup is = Checkup.of(Database.file(file));
        assertThat(is.troubles()).isEmpty();
        assertThat(is.missing()).isEqualTo(40);
        assertThat(is.events()).isEqualTo(260);
        assertThat(is.attempts()).isEqualTo(260);
    }
}

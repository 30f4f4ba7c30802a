package org.cupbeam.studio.seed;

import java.time.Instant;
import java.util.List;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import org.cupbeam.event.Health;
import org.cupbeam.event.Stamp;
import org.cupbeam.event.Topics;
import org.cupbeam.studio.store.FaultBook;
import org.cupbeam.studio.store.Store;

/** What goes wrong with rigs in a year: now and then a dirty receiver, a loose plug, a cable pulled out. */
final class Mishaps {
    private static final List<String> WORDS = List.of("past-2 has been blocked for 30 s: clean it, or move what stands in it",
            "before-1 turns on and off faster than anything in play can: look for a loose plug",
            "cup turns on and off faster than anything in play can: look for a loose plug");
    private static final long HOUR_MS = 3_600_000;
    private static final long DAY_MS = 24 * HOUR_MS;
    private static final int DAYS_BETWEEN = 60;

    private Mishaps() {
    }

    static void fill(Store store, Instant end, long seed, Size size) {
        RandomGenerator random = new SplittableRandom(~seed);
        FaultBook book = new FaultBook(store);
        for (int lane = 0; lane < size.lanes(); lane++) {
            Topics topics = new Topics(Scenario.STUDIO, Scenario.lane(lane));
            long atMs = end.toEpochMilli() - 364 * DAY_MS;
            for (long connection = 1; ; connection++) {
                atMs += (1 + random.nextInt(2 * DAYS_BETWEEN)) * DAY_MS;
                long overMs = atMs + HOUR_MS / 20 + (long) (3 * HOUR_MS * random.nextDouble());
                if (overMs >= end.toEpochMilli()) {
                    break;
                }
                int which = random.nextInt(WORDS.size() + 1);
                book.heard(topics, which < WORDS.size() ? online(connection, List.of(WORDS.get(which)))
                        : new Health(Health.State.LOST, connection, "seed", null), atMs);
                book.heard(topics, online(connection + 1, List.of()), overMs);
            }
        }
    }

    private static Health online(long connection, List<String> faults) {
        return new Health(Health.State.ONLINE, connection, "seed", new Health.Report("seed", "0", Instant.EPOCH,
                Stamp.Clock.SYNCHRONISED, 0, 0, List.of(), faults));
    }
}

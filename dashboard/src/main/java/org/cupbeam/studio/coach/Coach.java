package org.cupbeam.studio.coach;

import java.time.InstantSource;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Semaphore;
import org.cupbeam.studio.insight.Question;
import org.cupbeam.studio.insight.make.Peers;
import org.cupbeam.studio.insight.shot.Shot;
import org.cupbeam.studio.store.PuttsVersion;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.logbook.Players;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Knows what the numbers say of each player, and works it out anew only when the player's putts have changed. */
public final class Coach implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Coach.class);
    private static final int REMEMBERED_MAX = 300;
    /** More at once would only hold more putts in memory. */
    private static final int AT_ONCE_MAX = 2;
    private static final int READ_PLAYERS = 4;
    private static final int READ_ROUNDS = 2;
    private static final long COMPANY_FRESH_MS = 600_000;

    private record Asked(int player, Question question) {
    }

    private record Remembered(PuttsVersion version, Portrait portrait) {
    }

    private final Store store;
    private final InstantSource clock;
    private final Semaphore working = new Semaphore(AT_ONCE_MAX, true);
    private final Map<Asked, Remembered> remembered = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Asked, Remembered> eldest) {
            return size() > REMEMBERED_MAX;
        }
    };
    private final ExecutorService aside = Executors.newSingleThreadExecutor(task -> {
        Thread thread = new Thread(task, "insight");
        thread.setDaemon(true);
        thread.setPriority(Thread.MIN_PRIORITY);
        return thread;
    });
    private final Object companyLock = new Object();
    private volatile Company company;
    private volatile long companyMs;
    private volatile boolean counting;

    public Coach(Store store, InstantSource clock) {
        this.store = store;
        this.clock = clock;
    }

    /** What the numbers say of a player; of one without a putt, that there is nothing to say. */
    public Portrait portrait(int player, Question question) {
        Asked asked = new Asked(player, question);
        PuttsVersion version = store.read(h -> PuttsVersion.of(h, player));
        Portrait known = recall(asked, version);
        if (known != null) {
            return known;
        }
        working.acquireUninterruptibly();
        try {
            known = recall(asked, version);
            if (known == null) {
                List<Shot> shots = store.read(h -> ShotReader.all(h, player));
                known = Portrait.of(shots, question);
                remember(asked, new Remembered(version, known));
            }
            return known;
        } finally {
            working.release();
        }
    }

    /**
     * How the studio's own players putt from a distance; empty where they are too few for nobody to be told apart. Counted
     * anew every ten minutes, beside whoever asks.
     */
    public Optional<Peers> peers(double distanceMm) {
        if (company == null) {
            synchronized (companyLock) {
                if (company == null) {
                    count();
                }
            }
        } else if (clock.millis() - companyMs > COMPANY_FRESH_MS && !counting) {
            counting = true;
            aside.execute(() -> trying(this::count));
        }
        return company.from(distanceMm);
    }

    /** Has the code run before anybody waits for it, and the studio's players counted: in a thread of its own. */
    public void warmUp() {
        aside.execute(() -> trying(() -> {
            Rehearsal.run();
            for (int round = 0; round < READ_ROUNDS && !aside.isShutdown(); round++) {
                store.read(h -> Players.latest(h, READ_PLAYERS)).forEach(each ->
                        store.read(h -> ShotReader.all(h, each.id())));
            }
            if (!aside.isShutdown()) {
                peers(1);
            }
        }));
    }

    /** Nothing is begun beside any more: the store is about to close. */
    @Override
    public void close() {
        aside.shutdownNow();
    }

    private static void trying(Runnable task) {
        try {
            task.run();
        } catch (RuntimeException e) {
            LOG.warn("insight, beside: {}; whoever asks next will wait a little", e.toString());
        }
    }

    private void count() {
        try {
            company = Company.of(store, clock.millis());
            companyMs = clock.millis();
        } finally {
            counting = false;
        }
    }

    private Portrait recall(Asked asked, PuttsVersion version) {
        synchronized (remembered) {
            Remembered known = remembered.get(asked);
            return known != null && known.version.equals(version) ? known.portrait : null;
        }
    }

    private void remember(Asked asked, Remembered known) {
        synchronized (remembered) {
            remembered.put(asked, known);
        }
    }
}

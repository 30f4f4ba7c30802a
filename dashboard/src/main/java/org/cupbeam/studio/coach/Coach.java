package org.cupbeam.studio.coach;

import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.Semaphore;
import java.util.function.IntFunction;
import org.cupbeam.studio.insight.Question;
import org.cupbeam.studio.insight.make.Peers;
import org.cupbeam.studio.insight.shot.Shot;
import org.cupbeam.studio.store.PuttsVersion;
import org.cupbeam.studio.store.Store;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Knows what the numbers say of each player, and works it out anew only when the player's putts have changed. */
public final class Coach implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Coach.class);
    /** Of the memory that an all-in-one is given, an eighth. */
    private static final long REMEMBERED_BYTES = 8L << 20;
    /** More at once would only hold more putts in memory. */
    private static final int AT_ONCE_MAX = 2;
    /** By so many putts of real players the machine has compiled nearly all that it will. */
    private static final int WARM_PUTTS = 1_500_000;
    private static final int WARM_ROUNDS = 24;
    private static final long COMPANY_FRESH_MS = 600_000;

    private final Store store;
    private final InstantSource clock;
    private final Semaphore working = new Semaphore(AT_ONCE_MAX, true);
    private final Memory memory = new Memory(REMEMBERED_BYTES);
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
        return portrait(new Asked(player, question));
    }

    /** The same of what they putted on some lanes. */
    public Portrait portrait(Asked asked) {
        PuttsVersion version = store.read(h -> PuttsVersion.of(h, asked.player()));
        Portrait known = memory.recall(asked, version);
        if (known != null) {
            return known;
        }
        working.acquireUninterruptibly();
        try {
            known = memory.recall(asked, version);
            if (known == null) {
                known = workedOut(asked);
                memory.keep(asked, version, known);
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
        return company().from(distanceMm);
    }

    /**
     * Has the code run before anybody waits for it, the studio's players counted, and what will be asked of the busiest of
     * them at hand: in a thread of its own.
     *
     * @param usual what a player is asked for first
     */
    public void warmUp(IntFunction<Question> usual) {
        beside(() -> {
            Rehearsal.run();
            List<Integer> busiest = company().busiest();
            int putts = 0;
            for (int round = 0; round < WARM_ROUNDS && !busiest.isEmpty() && !aside.isShutdown(); round++) {
                int player = busiest.get(round % busiest.size());
                if (round < busiest.size()) {
                    putts += portrait(player, usual.apply(player)).putts();
                } else if (putts < WARM_PUTTS) {
                    putts += workedOut(new Asked(player, usual.apply(player))).putts();
                }
            }
        });
    }

    /** Nothing is begun beside any more: the store is about to close. */
    @Override
    public void close() {
        aside.shutdownNow();
    }

    private Portrait workedOut(Asked asked) {
        List<Shot> shots = store.read(h -> ShotReader.all(h, asked.player(), asked.lanes()));
        return Portrait.of(shots, asked.question());
    }

    private Company company() {
        if (company == null) {
            synchronized (companyLock) {
                if (company == null) {
                    count();
                }
            }
        } else if (clock.millis() - companyMs > COMPANY_FRESH_MS && !counting) {
            counting = true;
            beside(this::count);
        }
        return company;
    }

    private void count() {
        try {
            company = Company.of(store, clock.millis());
            companyMs = clock.millis();
        } finally {
            counting = false;
        }
    }

    private void beside(Runnable task) {
        try {
            aside.execute(() -> trying(task));
        } catch (RejectedExecutionException e) {
            LOG.debug("closed: {}", e.toString()); // whoever still asks is told what is known
        }
    }

    private void trying(Runnable task) {
        try {
            task.run();
        } catch (RuntimeException e) {
            if (!aside.isShutdown()) {
                LOG.warn("insight, beside: {}; whoever asks next will wait a little", e.toString());
            }
        }
    }
}

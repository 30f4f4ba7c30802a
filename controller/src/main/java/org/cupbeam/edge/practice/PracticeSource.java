package org.cupbeam.edge.practice;

import java.util.function.Consumer;
import java.util.function.DoubleSupplier;
import java.util.function.Supplier;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.edge.EdgeSource;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A simulated lane that plays by itself, live: somebody steps up, putts from where the drill says, fetches the ball,
 * and goes on until the source is closed.
 */
public final class PracticeSource implements EdgeSource {
    private static final Logger LOG = LoggerFactory.getLogger(PracticeSource.class);
    private static final long SETTLE_EVERY_NS = 100_000_000;
    private static final long WAKES_WITHIN_NS = 20_000_000;
    private static final long CLOSE_WITHIN_MS = 2_000;

    private final LivingLane lane;
    private final Tempo tempo;
    private final DoubleSupplier stationMm;
    private final Supplier<Player> player;
    private final Consumer<Truth> told;
    private Thread thread;

    /**
     * A lane about to be played.
     *
     * @param seed      with the same answers to what it asks, the same seed plays the same
     * @param lane      the lane
     * @param tempo     the clock that edges are stamped with, and how fast it runs
     * @param stationMm how far from the hole's centre the next putt is struck, mm; asked as it is struck, on the
     *                  source's thread; NaN or 0 while nobody putts, below 0 while balls are rolled by hand through all
     *                  beams, as in a test of the green
     * @param player    who strikes it, asked likewise
     * @param told      is told what truly happened, or will: called as the putt is struck, on the source's thread
     */
    public PracticeSource(long seed, PracticeLane lane, Tempo tempo, DoubleSupplier stationMm,
                          Supplier<Player> player, Consumer<Truth> told) {
        this.lane = new LivingLane(seed, lane);
        this.tempo = tempo;
        this.stationMm = stationMm;
        this.player = player;
        this.told = told;
    }

    @Override
    public synchronized void start(EdgeSink sink) {
        if (thread != null) {
            throw new IllegalStateException("this lane is being played already");
        }
        Performance performance = new Performance(lane, tempo.nowNs(), stationMm, player, told);
        thread = new Thread(() -> play(performance, sink), "practice-lane");
        thread.setDaemon(true);
        thread.start();
    }

    private void play(Performance performance, EdgeSink sink) {
        try {
            while (!Thread.interrupted()) {
                tempo.awaitNs(Math.min(performance.nextNs(), tempo.nowNs() + SETTLE_EVERY_NS));
                performance.playTo(tempo.nowNs(), sink);
            }
        } catch (InterruptedException closed) {
            Thread.currentThread().interrupt();
        } catch (RuntimeException broken) {
            LOG.error("the simulated lane has stopped", broken);
        }
    }

    /** {@inheritDoc} As late as a thread may wake up on a busy machine. */
    @Override
    public long latenessNs() {
        return Math.round(WAKES_WITHIN_NS * tempo.factor());
    }

    @Override
    public synchronized void close() {
        if (thread == null || !thread.isAlive()) {
            return;
        }
        thread.interrupt();
        try {
            thread.join(CLOSE_WITHIN_MS);
        } catch (InterruptedException hurried) {
            Thread.currentThread().interrupt();
        }
        if (thread.isAlive()) {
            LOG.warn("the simulated lane did not stop within {} ms: its sink blocks", CLOSE_WITHIN_MS);
        }
    }
}

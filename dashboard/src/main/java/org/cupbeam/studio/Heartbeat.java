package org.cupbeam.studio;

import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.cupbeam.service.Overseer;

/** Tells the machine's service manager every few seconds that the host comes round, for as long as it does. */
final class Heartbeat implements AutoCloseable {
    private static final int EVERY_S = 5;

    private final ScheduledExecutorService thread = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread daemon = new Thread(work, "heartbeat");
        daemon.setDaemon(true);
        return daemon;
    });

    private Heartbeat() {
    }

    /** @param round returns when the host has shown that it comes round */
    static Heartbeat start(Overseer overseer, Runnable round) {
        Heartbeat heartbeat = new Heartbeat();
        heartbeat.thread.scheduleWithFixedDelay(() -> {
            round.run();
            overseer.well();
        }, 0, EVERY_S, TimeUnit.SECONDS);
        return heartbeat;
    }

    @Override
    public void close() {
        thread.shutdownNow();
    }
}

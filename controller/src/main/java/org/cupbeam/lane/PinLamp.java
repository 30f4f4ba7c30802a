package org.cupbeam.lane;

import java.util.function.Consumer;
import java.util.function.LongSupplier;
import org.cupbeam.journal.Worker;

/** A lamp on a pin. The lane's thread says what to show; a thread of the lamp's own keeps its rhythm. */
final class PinLamp implements Lamp, AutoCloseable {
    private static final long IDLE_NS = 1_000_000_000;

    private final Consumer<Boolean> pin;
    private final LongSupplier nanoTime;
    private volatile Shown shown;
    private Boolean lit;
    private Worker worker;

    private record Shown(State state, long sinceNs) {
    }

    /**
     * @param pin takes whether the lamp is to be lit; called on the lamp's thread alone
     */
    PinLamp(Consumer<Boolean> pin, LongSupplier nanoTime) {
        this.pin = pin;
        this.nanoTime = nanoTime;
        shown = new Shown(State.READY, nanoTime.getAsLong());
    }

    PinLamp start() {
        worker = Worker.start("lamp", this::doWork, this::idleNs);
        return this;
    }

    @Override
    public void show(State state) {
        shown = new Shown(state, nanoTime.getAsLong());
        if (worker != null) {
            worker.wake();
        }
    }

    /** One step: sets the pin where it is to change. */
    int doWork() {
        Shown now = shown;
        boolean wanted = Rhythm.isLit(now.state(), nanoTime.getAsLong() - now.sinceNs());
        if (lit == null || lit != wanted) {
            lit = wanted;
            pin.accept(wanted);
        }
        return 0;
    }

    private long idleNs() {
        Shown now = shown;
        long intoBeatNs = (nanoTime.getAsLong() - now.sinceNs()) % Rhythm.BEAT_NS;
        return Rhythm.changes(now.state()) ? Rhythm.BEAT_NS - intoBeatNs : IDLE_NS;
    }

    @Override
    public void close() {
        if (worker != null) {
            worker.close();
        }
    }
}

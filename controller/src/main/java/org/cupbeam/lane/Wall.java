package org.cupbeam.lane;

import java.time.Instant;
import org.cupbeam.event.Stamp;

/** Monotonic times as events have them. The wall clock gives them a time of day, and nothing else depends on it. */
final class Wall {
    private final Surroundings around;
    private boolean synchronised;

    Wall(Surroundings around) {
        this.around = around;
        look();
    }

    long nowNs() {
        return around.nanoTime().getAsLong();
    }

    Instant now() {
        return around.wall().instant();
    }

    /** Looks whether the wall clock has become believable; once it is, it stays so. */
    void look() {
        synchronised = synchronised || around.synchronised().getAsBoolean();
    }

    Stamp.Clock clock() {
        return synchronised ? Stamp.Clock.SYNCHRONISED : Stamp.Clock.UNSYNCHRONISED;
    }

    Stamp stamp(long timeNs) {
        return new Stamp(around.boot(), timeNs, clock());
    }

    /** The wall clock's time at a moment not long ago. */
    Instant at(long timeNs) {
        return now().minusNanos(Math.max(0, Math.round((nowNs() - timeNs) / around.pace())));
    }

    String boot() {
        return around.boot();
    }
}

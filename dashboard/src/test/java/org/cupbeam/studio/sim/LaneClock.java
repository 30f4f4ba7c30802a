package org.cupbeam.studio.sim;

import java.time.Instant;
import java.util.HashMap;
import java.util.Map;

/** The clocks of a board without a battery: a monotonic one, and one on the wall that is wrong until the network sets it. */
final class LaneClock {
    /** What it truly is when a simulation begins: the evening before Europe's clocks go back. */
    static final Instant BEGINNING = Instant.parse("2026-10-24T23:58:00Z");
    static final long HOUR_NS = 3_600L * Agenda.S;

    private final Agenda agenda;
    private long bootedNs;
    private long offByNs;
    private boolean synchronised;
    private long synchronisedNs;
    private boolean jumped;
    private String boot;
    private final Map<String, Long> boots = new HashMap<>();

    LaneClock(Agenda agenda) {
        this.agenda = agenda;
    }

    static Instant truth(long nowNs) {
        return BEGINNING.plusNanos(nowNs);
    }

    /** The board starts, with the wall clock so far off. */
    void boots(String name, long wrongByNs) {
        boot = name;
        bootedNs = agenda.nowNs() - 2 * Agenda.S;
        boots.put(name, bootedNs);
        offByNs = wrongByNs;
        synchronised = wrongByNs == 0;
    }

    /** The network has told it the time. */
    void synchronises() {
        offByNs = 0;
        synchronised = true;
        synchronisedNs = agenda.nowNs();
    }

    /** Whether it has just become believable, so that the lane may not have looked yet. */
    boolean isNewlyBelieved() {
        return synchronised && agenda.nowNs() - synchronisedNs < 2 * Agenda.S;
    }

    /** Somebody, or something, sets the wall clock wrong, whether it is believed or not. */
    void jumps(long byNs) {
        offByNs += byNs;
        jumped |= synchronised;
    }

    /** Whether the wall clock was ever wrong while it was believed. */
    boolean lied() {
        return jumped;
    }

    String boot() {
        return boot;
    }

    boolean isBelieved() {
        return synchronised;
    }

    long monotonicNs() {
        return agenda.nowNs() - bootedNs;
    }

    Instant wall() {
        return truth(agenda.nowNs()).plusNanos(offByNs);
    }

    /** What it truly was when the monotonic clock of a boot showed this. */
    Instant truthAt(String itsBoot, long monotonicNs) {
        return truth(boots.get(itsBoot) + monotonicNs);
    }

    @Override
    public String toString() {
        return boot + " since " + bootedNs + ", believed since " + synchronisedNs + ", now " + agenda.nowNs();
    }
}

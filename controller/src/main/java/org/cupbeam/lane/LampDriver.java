package org.cupbeam.lane;

import org.cupbeam.event.Putt;

/** What the lamp shows, moment by moment: the last putt for a while, else a fault, else a ball, else that all is well. */
final class LampDriver {
    private static final long PUTT_NS = 2_000_000_000L;

    private final Lamp lamp;
    private Lamp.State putt;
    private long puttUntilNs;
    private Lamp.State shown;

    LampDriver(Lamp lamp) {
        this.lamp = lamp;
    }

    void putt(Putt made, long nowNs) {
        if (made.outcome() == Putt.Outcome.HOLED || made.overshoot()) {
            putt = made.overshoot() ? Lamp.State.OVERSHOOT : Lamp.State.HOLED;
            puttUntilNs = nowNs + PUTT_NS;
        }
    }

    void look(boolean fault, boolean ballSeen, long nowNs) {
        if (putt != null && nowNs - puttUntilNs >= 0) {
            putt = null;
        }
        Lamp.State now = ballSeen ? Lamp.State.BALL_SEEN : Lamp.State.READY;
        now = fault ? Lamp.State.FAULT : now;
        now = putt != null ? putt : now;
        if (now != shown) {
            shown = now;
            lamp.show(now);
        }
    }
}

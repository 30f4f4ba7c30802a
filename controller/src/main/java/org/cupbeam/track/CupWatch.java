package org.cupbeam.track;

/**
 * Tells a ball's drop from a hand in the cup.
 *
 * <p>A ball falls past the cup's sensor and rattles: pulses of some ten milliseconds with gaps of about as much. A hand
 * blocks it for longer, and chatters on its way in and out.
 */
final class CupWatch {
    /** A falling ball is past the sensor within this, even at the top of a bounce. */
    static final long LONGEST_DROP_NS = 150_000_000;
    /** What follows a hand by less than this is still the hand. */
    private static final long HAND_LINGERS_NS = 500_000_000;
    /** What follows a drop by less than this is its rattle. */
    private static final long RATTLE_NS = 250_000_000;
    private static final long LATE_NS = 110_000_000;
    /** No ball rattles for longer: what does is a light that flickers, or a loose contact. */
    private static final long RATTLES_MOST_NS = 1_500_000_000;
    /** A drop that no beam foretold is believed after this much quiet. */
    private static final long SETTLED_NS = 400_000_000;

    private long handEndNs = Long.MIN_VALUE / 2;
    private long rattleEndNs = Long.MIN_VALUE / 2;
    private long dropNs = Sensor.NEVER;

    /** What a pulse of the cup's sensor is. */
    enum Pulse {
        /** The first of a drop. */
        DROP,
        /** One more of it, or, since it comes late, perhaps the next ball's. */
        LATE_RATTLE,
        /** One more of it. */
        RATTLE,
        /** A hand's. */
        HAND
    }

    /** Takes a pulse. */
    Pulse pulse(long onNs, long offNs) {
        long gapNs = onNs - rattleEndNs;
        if (offNs - onNs > LONGEST_DROP_NS) {
            handEndNs = offNs;
            dropNs = Sensor.NEVER;
            return Pulse.HAND;
        }
        if (onNs - handEndNs < HAND_LINGERS_NS) {
            handEndNs = offNs;
            return Pulse.HAND;
        }
        rattleEndNs = offNs;
        if (gapNs < RATTLE_NS) {
            if (dropNs != Sensor.NEVER && offNs - dropNs > RATTLES_MOST_NS) {
                dropNs = Sensor.NEVER;
            }
            return gapNs < LATE_NS ? Pulse.RATTLE : Pulse.LATE_RATTLE;
        }
        dropNs = onNs;
        return Pulse.DROP;
    }

    /** When the last drop may be believed without a beam's word; {@link Sensor#NEVER} if there is none to believe. */
    long settlesNs() {
        return dropNs == Sensor.NEVER ? Sensor.NEVER : rattleEndNs + SETTLED_NS;
    }

    /** The drop that has settled or has been used. */
    long takeDrop() {
        long taken = dropNs;
        dropNs = Sensor.NEVER;
        return taken;
    }
}

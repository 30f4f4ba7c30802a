package org.cupbeam.edge.practice;

import org.cupbeam.edge.EdgeSink;

/**
 * A lane that is putted on, putt by putt: who asks for the next putt says where from, and takes the edges up to then.
 *
 * <p>The same seed and the same putts give the same edges and the same truth, bit for bit. Balls do not knock into
 * each other: one that lies still has been fetched before the next comes near, and a ball struck while another rolls
 * follows it and does not catch it up.
 */
final class LivingLane {
    private static final double NS_PER_S = 1e9;
    private static final double S_PER_HOUR = 3600;
    private static final long FIRST_STRIKE_NS = 2_000_000_000;
    /** Nobody strikes two balls from one spot in less. */
    private static final double SOONEST_STRIKE_S = 1.4;
    private static final long APART_NS = 600_000_000;
    private static final long AFTER_PUTT_NS = 1_000_000_000;
    private static final int ROLLS_EACH_WAY = 3;

    private final PracticeLane lane;
    private final Sensors sensors;
    private final Visitors visitors;
    private final Swing swing;
    private final Dice dice;
    private final double laneSpeed;
    private final double driftPerHour;
    private Putt last;
    private boolean early;
    private long nextStrikeNs = FIRST_STRIKE_NS;
    private long spikedUntilNs;
    /** Balls that no sensor saw and nobody has pressed the pedal for. */
    private int unseen;
    private int rolled;

    LivingLane(long seed, PracticeLane lane) {
        Dice all = new Dice(seed);
        this.lane = lane;
        sensors = new Sensors(lane, all.split());
        visitors = new Visitors(lane.room(), sensors, all.split());
        Dice green = all.split();
        laneSpeed = 1 + lane.surface().laneSpeedSd() * green.normal();
        driftPerHour = lane.surface().driftSdPerHour() * green.normal();
        swing = new Swing(turf(laneSpeed), all.split());
        dice = all.split();
    }

    /** When the next putt is struck; an edge before then is settled. */
    long nextStrikeNs() {
        return nextStrikeNs;
    }

    /** Nobody putts for now. */
    void pass(long durationNs) {
        early = false;
        nextStrikeNs += durationNs;
        spikeUntil(nextStrikeNs);
    }

    /** Nobody putts: a ball is rolled by hand through all beams, three one way, then three the other. */
    void roll() {
        early = false;
        nextStrikeNs = Math.max(nextStrikeNs, last == null ? 0 : last.endedNs() + AFTER_PUTT_NS);
        Shadow shadow = HandRoll.through(lane.rig(), turfAt(nextStrikeNs), sensors.lights(), dice,
                rolled++ / ROLLS_EACH_WAY % 2 == 0 ? 1 : -1);
        sensors.cast(shadow, nextStrikeNs);
        nextStrikeNs += shadow.changes().stream().mapToLong(Shadow.Change::timeNs).max().orElse(0) + dice.ns(2, 4);
        spikeUntil(nextStrikeNs);
    }

    /** Hands over the edges that no later putt can change. */
    void play(EdgeSink sink) {
        sensors.wires().play(nextStrikeNs, sink);
    }

    /** Hands over all edges that are left; no putt may follow. */
    void playOut(EdgeSink sink) {
        sensors.wires().play(Long.MAX_VALUE, sink);
    }

    /** Putts the next ball, from this far, and says what happened. */
    Truth putt(double fromMm, Player player) {
        Putt putt = new Putt(cup(turfAt(nextStrikeNs)), fromMm, swing.of(player, fromMm), sensors.lights());
        putt.strikeAt(nextStrikeNs);
        long othersEndNs = last == null ? 0 : last.endedNs();
        if (early && putt.overtakes(last, APART_NS)) {
            putt.strikeAt(othersEndNs + dice.ns(0.2, 1));
            early = false;
        }
        if (early) {
            putt.mark(Truth.Trait.EARLY);
        }
        boolean felt = strike(putt);
        boolean visible = sensors.cast(putt.shadow(), putt.struckNs()) || felt;
        unseen += visible ? 0 : 1;
        goOn(putt, Math.max(othersEndNs, putt.expectedUntilNs()));
        return putt.truth(lane.rig().limitMm(), visible);
    }

    /** What follows: the next ball at once, or whatever happens on the lane before it. */
    private void goOn(Putt putt, long endNs) {
        boolean wasEarly = early;
        double latestS = 0.95 * putt.durationS();
        early = !wasEarly && latestS > SOONEST_STRIKE_S && visitors.early(putt);
        if (early) {
            nextStrikeNs = putt.struckNs() + dice.ns(Math.max(SOONEST_STRIKE_S, latestS / 2), latestS);
        } else {
            if (!wasEarly) {
                visitors.during(putt);
            }
            long clearNs = visitors.after(putt, enter(endNs)) + dice.ns(0.8, 1.5);
            nextStrikeNs = Math.max(clearNs, endNs + dice.ns(0.5 * lane.restS(), 1.5 * lane.restS()));
        }
        last = putt;
        spikeUntil(nextStrikeNs);
    }

    /** A short press of the pedal for each ball that was not seen, well apart: two at once would take one back. */
    private long enter(long endNs) {
        long now = endNs;
        for (; unseen > 0 && sensors.hasPedal(); unseen--) {
            long fromNs = now + dice.ns(1.2, 1.8);
            now = fromNs + dice.ns(0.08, 0.25);
            sensors.pedalWire().block(fromNs, now);
        }
        return now;
    }

    private void spikeUntil(long untilNs) {
        sensors.wires().spike(lane.sensing().spikesPerMinute(), spikedUntilNs, untilNs, dice);
        spikedUntilNs = untilNs;
    }

    /** The knock of putter on ball: a pulse of 1 to 4 ms, at times with an echo. Whether a sensor felt it. */
    private boolean strike(Putt putt) {
        long atNs = putt.struckNs();
        long endNs = atNs + dice.ns(0.001, 0.004);
        long echoNs = atNs + dice.ns(0.005, 0.014);
        boolean echoes = dice.chance(0.3);
        boolean missed = dice.chance(lane.sensing().unfeltShare());
        if (!sensors.hasStrike()) {
            return false;
        }
        if (missed) {
            putt.mark(Truth.Trait.UNFELT);
            return false;
        }
        sensors.strikeWire().block(atNs, endNs);
        if (echoes) {
            sensors.strikeWire().block(echoNs, echoNs + dice.ns(0.0005, 0.0015));
        }
        return sensors.strikeWorks(atNs);
    }

    private Turf turfAt(long timeNs) {
        double drift = driftPerHour * timeNs / (S_PER_HOUR * NS_PER_S);
        return turf(laneSpeed * (1 + drift) * (1 + lane.surface().puttSpeedSd() * dice.normal()));
    }

    private Turf turf(double speed) {
        return Turf.of(lane.rig().stimpFt() * speed, lane.rig().uphillPercent(), lane.rig().sidePercent(),
                lane.surface().slidingFriction());
    }

    /** The floor of a cup, worn or matted, gives back little, and never twice the same. */
    private Cup cup(Turf turf) {
        return new Cup(turf, lane.surface().rebound(), dice.between(0.15, 0.4), lane.surface().slidingFriction());
    }
}

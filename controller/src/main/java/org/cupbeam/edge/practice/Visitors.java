package org.cupbeam.edge.practice;

import org.cupbeam.edge.practice.Sensors.Pair;

/** What else happens on a lane, between the putts and beside them. */
final class Visitors {
    private static final double NS_PER_S = 1e9;
    /** Later than this after a ball's end, no sensor could take another ball for it. */
    private static final double FORGOTTEN_AFTER_S = 3.5;
    private static final double CLEAR_OF_BALL_S = 0.5;

    private final Room room;
    private final Sensors sensors;
    private final Dice dice;
    private final Feet feet;
    private final Hands hands;
    private final StrayBalls strays;

    Visitors(Room room, Sensors sensors, Dice dice) {
        this.room = room;
        this.sensors = sensors;
        this.dice = dice;
        feet = new Feet(sensors, dice);
        hands = new Hands(sensors, dice);
        strays = new StrayBalls(sensors, hands, dice);
    }

    /**
     * After a putt, until the line is clear again.
     *
     * @param putt  the last ball
     * @param endNs when it, and any ball before it, had come to its end, and none could be expected any more
     * @return when the line is clear
     */
    long after(Putt putt, long endNs) {
        long now = endNs;
        if (putt.shadow().blocksAny()) {
            now = hands.pickUp(putt.shadow(), endNs + dice.ns(1, 3), room.walk() > 0 ? 0.7 : 0);
        }
        if (sensors.hasCup() && dice.chance(putt.holed() ? room.hand() : room.reach())) {
            now = overCup(now + pause());
        }
        if (!sensors.beams().isEmpty() && dice.chance(room.rollBack())) {
            now = strays.back(putt.turf(), now + pause());
        }
        now = atPairs(now);
        if (sensors.hasStrike() && dice.chance(room.bump())) {
            now = hands.bump(now + pause());
        }
        if (strays.canTellForward() && dice.chance(room.forward())) {
            long forgottenNs = endNs + Math.round(FORGOTTEN_AFTER_S * NS_PER_S);
            now = strays.forward(putt.turf(), Math.max(now, forgottenNs) + pause());
        }
        return now;
    }

    private long atPairs(long fromNs) {
        long now = fromNs;
        if (sensors.pairs().isEmpty()) {
            return now;
        }
        if (dice.chance(room.walk())) {
            now = feet.walk(now + pause());
        }
        if (dice.chance(room.wave())) {
            now = hands.wave(anyPair(), now + pause());
        }
        if (dice.chance(room.stand())) {
            now = feet.stand(anyPair(), now + pause());
        }
        return now;
    }

    /** A hand in the cup; at times with the knees or the other hand in a pair. */
    private long overCup(long fromNs) {
        long outNs = hands.intoCup(fromNs);
        if (!sensors.pairs().isEmpty() && dice.chance(0.3)) {
            return Math.max(outNs, feet.step(anyPair(), fromNs + dice.ns(0, 0.5)));
        }
        return outNs;
    }

    /** While a ball is on its way: somebody passes through a pair that it is not near. */
    void during(Putt putt) {
        if (sensors.pairs().isEmpty() || !dice.chance(room.passBy())) {
            return;
        }
        Pair pair = anyPair();
        long fromNs = putt.struckNs() + dice.ns(0, Math.max(0, putt.durationS() - 1));
        long clearNs = Math.round(CLEAR_OF_BALL_S * NS_PER_S);
        // A step into a pair lasts 2.3 s at the most.
        long toNs = fromNs + Math.round(2.3 * NS_PER_S);
        if (!putt.near(pair.beams(), fromNs - clearNs, toNs + clearNs)) {
            feet.step(pair, fromNs);
        }
    }

    private Pair anyPair() {
        return dice.pick(sensors.pairs());
    }

    private long pause() {
        return dice.ns(0.4, 1.5);
    }

    /** Whether the next ball is struck before this one has come to its end; not if nobody could tell them apart. */
    boolean early(Putt putt) {
        return dice.chance(room.early()) && !putt.shadow().blocksAny() && !putt.rimmedOut();
    }
}

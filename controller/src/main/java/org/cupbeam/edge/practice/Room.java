package org.cupbeam.edge.practice;

/**
 * How lively the room is: the share of putts after which (or, where it says so, during which) something happens that
 * is no putt.
 *
 * <p>All of it can be told from a putt by what the sensors say: a shoe blocks both beams of a pair at once, a ball
 * never does; a ball rolled back comes in the wrong order; a putter's head is not as long as a ball. What could not be
 * told from a putt by any means is left out: a knock on the strike sensor as short as a putt's, a ball dropped into the
 * cup by hand where no beam stands before the hole, a hand that stays in the first beam of a pair.
 *
 * @param walk      somebody walks over the line, through one or more pairs
 * @param passBy    during a putt: somebody walks through a pair that the ball is not near
 * @param hand      after a drop: a hand in the cup
 * @param reach     no drop: a hand in the cup all the same
 * @param rollBack  a ball rolled back to the player
 * @param forward   a ball rolled on by hand from beside the hole, where a pair stands before the hole
 * @param wave      a putter or a hand through a beam or a pair
 * @param stand     a foot in a pair for seconds
 * @param early     the next ball is struck before this one lies still
 * @param bump      something set down on the strike sensor, far longer than a strike
 */
public record Room(double walk, double passBy, double hand, double reach, double rollBack, double forward,
                   double wave, double stand, double early, double bump) {

    /** Nobody but the balls. */
    public static Room empty() {
        return new Room(0, 0, 0, 0, 0, 0, 0, 0, 0, 0);
    }

    /** Players and onlookers on a busy evening. */
    public static Room busy() {
        return new Room(0.25, 0.02, 0.6, 0.02, 0.15, 0.01, 0.06, 0.03, 0.04, 0);
    }

    /** Players in a hurry, and nobody else: one ball in five is struck before the last lies still. */
    public static Room hurried() {
        return new Room(0, 0, 0.1, 0, 0, 0, 0, 0, 0.25, 0);
    }

    /** Busier than any evening: much of everything. */
    public static Room rough() {
        return new Room(0.4, 0.1, 0.8, 0.1, 0.3, 0.08, 0.25, 0.1, 0.08, 0.05);
    }
}

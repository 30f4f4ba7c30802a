package org.cupbeam.track;

import org.cupbeam.green.Ball;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Rig;

/**
 * How the rig's beams lie, as the tracker needs them.
 *
 * <p>A beam at height z is cut by a ball of radius r while its centre is within √(r² − (z − r)²) of it: elementary
 * geometry. The direction in which the ball crosses does not matter, since both are measured along the line.
 */
final class Lay {
    /** Beams further apart than this are no pair. */
    static final double PAIR_MM = 150;
    final int beams;
    /** How many of them stand before the hole. */
    final int before;
    final int[] channel;
    final double[] positionMm;
    final double[] halfChordMm;
    private final int[] fellow;

    Lay(Rig rig) {
        beams = rig.beams().size();
        channel = new int[beams];
        positionMm = new double[beams];
        halfChordMm = new double[beams];
        int count = 0;
        for (int i = 0; i < beams; i++) {
            Beam beam = rig.beams().get(i);
            channel[i] = beam.channel();
            positionMm[i] = beam.positionMm();
            double above = beam.heightMm() - Ball.RADIUS_MM;
            halfChordMm[i] = Math.sqrt(Ball.RADIUS_MM * Ball.RADIUS_MM - above * above);
            count += beam.positionMm() < 0 ? 1 : 0;
        }
        before = count;
        fellow = new int[beams];
        for (int i = 0; i < beams; i++) {
            fellow[i] = isPair(i) ? i + 1 : isPair(i - 1) ? i - 1 : -1;
        }
    }

    /** Where a ball's centre is when its leading limb reaches the beam. */
    double arrivalMm(int beam) {
        return positionMm[beam] - halfChordMm[beam];
    }

    /** Where a ball's centre is when its trailing limb leaves the beam. */
    double departureMm(int beam) {
        return positionMm[beam] + halfChordMm[beam];
    }

    /** Whether they stand so close that a ball blocks both at once; those of a pair do not. */
    boolean overlap(int beam, int other) {
        return Math.abs(positionMm[beam] - positionMm[other]) < halfChordMm[beam] + halfChordMm[other];
    }

    /** Whether it makes a pair with the next: close, though not so close that a ball blocks both, and on one side of the hole. */
    boolean isPair(int beam) {
        return beam >= 0 && beam + 1 < beams && positionMm[beam + 1] - positionMm[beam] <= PAIR_MM
                && !overlap(beam, beam + 1) && isBeforeHole(beam) == isBeforeHole(beam + 1);
    }

    /** The other beam of its pair; -1 where it has none. */
    int fellow(int beam) {
        return fellow[beam];
    }

    boolean isBeforeHole(int beam) {
        return beam < before;
    }
}

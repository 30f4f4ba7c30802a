package org.cupbeam.event;

import org.cupbeam.drill.Worded;

/**
 * One putt, resolved, as the wire has it: lengths and speeds to a tenth.
 *
 * @param outcome           holed or missed
 * @param finishMm          where the ball's centre came to rest; NaN when holed or not known
 * @param finishSdMm        standard deviation of that; NaN where there is no estimate
 * @param lowMm             lower end of the 95 % interval or hard bound; NaN where there is none
 * @param highMm            upper end, likewise
 * @param overshoot         a miss that finished beyond the limit in force
 * @param speedAtHoleMmPerS the speed at the hole's centre had there been no hole; NaN where not known
 * @param paceMm            where it would have stopped had there been no hole; NaN where not known
 * @param rim               it touched the rim and stayed out
 * @param how               seen by the sensors, or entered by somebody
 */
public record Putt(Outcome outcome, double finishMm, double finishSdMm, double lowMm, double highMm,
                   boolean overshoot, double speedAtHoleMmPerS, double paceMm, boolean rim, How how) {

    /** How a putt ended. */
    public enum Outcome implements Worded { HOLED, MISSED }

    /** How it is known. */
    public enum How implements Worded { SENSED, ENTERED }
}

package org.cupbeam.track;

/**
 * What truly happened, as a grader needs it.
 *
 * @param finishMm NaN when holed
 * @param visible  whether any sensor of the rig could know of it
 * @param flew     the rim threw it into the air, where no beam can tell how far it goes
 */
record TruePutt(double struckS, double endedS, boolean holed, double finishMm, boolean overshoot, boolean visible,
                boolean rim, boolean flew) {
}

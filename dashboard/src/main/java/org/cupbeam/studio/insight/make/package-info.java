/**
 * How likely a putt is holed from here, and against whom that is good.
 *
 * <p>Belongs here: curves of the make rate over distance, from makes alone or from what the beams measured, fitted to a
 * player with a prior; published rates to compare with. Does not belong here: drills, time, advice.
 */
package org.cupbeam.studio.insight.make;

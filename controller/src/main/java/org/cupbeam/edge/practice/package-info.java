/**
 * A simulated green to practise on: balls, people, hands and faulty sensors, with the truth of what happened.
 *
 * <p>Belongs here: two-dimensional rolling, the rim, sensors' delays, and a room's disturbances, all from one seed.
 * Does not belong here: any formula that the tracker estimates with; the two share constants only, so that one can
 * check the other.
 */
package org.cupbeam.edge.practice;

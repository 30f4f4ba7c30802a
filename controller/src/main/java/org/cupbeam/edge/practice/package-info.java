/**
 * A simulated green to practise on: balls, people, hands and faulty sensors, with the truth of what happened.
 *
 * <p>Balls slide, then roll, over a plane, integrated step by step; the hole is a solid that a rigid ball meets in
 * three dimensions; light is blocked where the ball then is. {@link org.cupbeam.edge.practice.Evening} simulates an
 * evening at once, {@link org.cupbeam.edge.practice.PracticeSource} plays a lane live.
 *
 * <p>Belongs here: two-dimensional rolling, the rim, sensors' delays, and a room's disturbances, all from one seed.
 * Does not belong here: any formula that the tracker estimates with; the two share constants only, so that one can
 * check the other.
 */
package org.cupbeam.edge.practice;

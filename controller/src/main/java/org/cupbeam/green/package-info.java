/**
 * What a ball does on a green: its size, the hole's, green speed, slope, rolling, capture and break.
 *
 * <p>Belongs here: pure functions and records of the physics, in SI-derived units named in each identifier.
 * Does not belong here: anything that knows of sensors, time stamps, files or players.
 */
package org.cupbeam.green;

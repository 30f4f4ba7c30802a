/**
 * The lane's loop, which joins sensors, tracker, drill, journal and link; health, lamp, watchdog.
 *
 * <p>Belongs here: the one thread that owns a lane's state, and what it reports. Does not belong here: rules of the
 * other rooms.
 */
package org.cupbeam.lane;

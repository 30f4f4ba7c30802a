/**
 * Drills, runs and duels as pure state machines.
 *
 * <p>Belongs here: the rules of play and the drill file. Does not belong here: clocks, sensors, storage, wire formats.
 */
package org.cupbeam.drill;

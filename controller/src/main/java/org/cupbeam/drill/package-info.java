/**
 * Drills, runs and duels as pure state machines, and the drill file.
 *
 * <p>Belongs here: the rules of play. {@link org.cupbeam.drill.Drill} says how a drill goes,
 * {@link org.cupbeam.drill.Run} is one player's go through it, {@link org.cupbeam.drill.Play} everybody's, as a fold
 * over {@linkplain org.cupbeam.drill.Move moves}. Does not belong here: clocks, sensors, storage, wire formats.
 */
package org.cupbeam.drill;

/**
 * A made-up studio's history: who came, what was played, how every putt rolled, all from one seed, with the truth about
 * its players.
 *
 * <p>A room of its own, and the last, since only the main (for the demo) and tests may draw on it: nothing that works
 * on real putts must know invented ones. It puts events in by the way that every event comes in, so that whatever reads
 * the store can be tried on it.
 *
 * <p>Belongs here: invented people and their habits, and how their putts roll. Does not belong here: anything of
 * {@code insight}, since what is planted here is there to check it; the two share the physics of the green only.
 */
package org.cupbeam.studio.seed;

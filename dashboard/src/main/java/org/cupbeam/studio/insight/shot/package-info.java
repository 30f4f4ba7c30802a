/**
 * A player's putts, as insight takes them.
 *
 * <p>Belongs here: one putt with what was measured of it, and the sums over many that everything else is worked out
 * from. Does not belong here: where putts come from, and what they mean.
 */
package org.cupbeam.studio.insight.shot;

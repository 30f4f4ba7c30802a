/**
 * The break and pace card of a lane: where to aim, and how fast.
 *
 * <p>Belongs here: putts on a plane that are to pass over the hole at a pace of choice. Does not belong here: what players
 * make of them.
 */
package org.cupbeam.studio.insight.card;

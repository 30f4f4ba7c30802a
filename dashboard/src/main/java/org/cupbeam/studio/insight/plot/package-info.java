/**
 * The points that plots are drawn from.
 *
 * <p>Belongs here: a player's putts brought down to as many points as a page can show, with their intervals. Does not belong
 * here: what is concluded from them, and drawing.
 */
package org.cupbeam.studio.insight.plot;

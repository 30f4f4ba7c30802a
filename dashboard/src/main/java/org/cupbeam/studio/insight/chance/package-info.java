/**
 * Chances, and how well they are known.
 *
 * <p>Belongs here: shares with their intervals, distributions, and the search for the parameters that the data speak
 * for. Does not belong here: anything that knows of golf.
 */
package org.cupbeam.studio.insight.chance;

/**
 * The speed of a lane's green.
 *
 * <p>Belongs here: the day's reading, how it drifts, when to warn; a test by rolling balls both ways. Does not belong here:
 * how a lane measures a ball, and putts.
 */
package org.cupbeam.studio.insight.surface;

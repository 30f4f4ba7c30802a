/**
 * Edges, and where they come from: a board, a trace, a simulated green.
 *
 * <p>Belongs here: the change of one channel with its time, sources of such changes, and the seam between them and
 * whoever listens. Does not belong here: what an edge means (see {@code track}).
 */
package org.cupbeam.edge;

/**
 * Edges from a board's pins, stamped by the kernel.
 *
 * <p>Belongs here: the reading of GPIO lines, merging them in order of time, and driving one. Does not belong here: debouncing or
 * any judgement of an edge.
 */
package org.cupbeam.edge.board;

/**
 * Edges from, and to, a Value Change Dump (IEEE 1364).
 *
 * <p>Belongs here: a streaming reader and a writer. Does not belong here: any knowledge of balls or drills.
 */
package org.cupbeam.edge.trace;

/**
 * Leads through a new lane, or one that is there: which line each sensor hangs on and which way round, whether a quiet
 * minute is quiet, where the beams stand by balls rolled through them, and the rig file that comes of it.
 *
 * <p>Belongs here: the steps and their words, as functions of edges, of settled time and of what was typed. Does not belong
 * here: a pin, a file, a terminal, a clock (see {@code cli}), or anything of a lane that plays.
 */
package org.cupbeam.commission;

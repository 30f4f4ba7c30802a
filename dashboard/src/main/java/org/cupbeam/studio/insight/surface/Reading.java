package org.cupbeam.studio.insight.surface;

/**
 * What a lane held its green's speed to be at some time.
 *
 * @param atMs    in ms since 1970, UTC
 * @param stimpFt as on a level green
 * @param sdFt    how well that was known, standard deviation
 */
public record Reading(long atMs, double stimpFt, double sdFt) {
}

/**
 * From edges to attempts: which crossings are a ball's, which ball's, and where it finished.
 *
 * <p>Belongs here: pulses, rolling hypotheses, the finish estimator. Does not belong here: clocks, threads, files,
 * drills, players.
 */
package org.cupbeam.track;

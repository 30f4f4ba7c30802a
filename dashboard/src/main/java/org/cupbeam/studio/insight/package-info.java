/**
 * What the numbers say, for player and coach: functions of a player's putts and of nothing else.
 *
 * <p>{@link org.cupbeam.studio.insight.Insight} has all of it for one player; its rooms have each part by itself, every one
 * using those before it only: {@code words}, {@code chance}, {@code shot}, {@code make} (how likely from here, against
 * whom), {@code run} (how far a run will go), {@code weak} (what is weak), {@code turn} (when it turned), {@code card}
 * (where to aim), {@code surface} (the green's speed), {@code plot} (what is drawn of it), {@code advice} (what next). Each result says itself in plain words.
 *
 * <p>Does not belong here: clocks, files, threads, databases, pages. Putts come in as {@code Shot}s, whoever keeps them.
 */
package org.cupbeam.studio.insight;

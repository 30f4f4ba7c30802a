/**
 * How far a run will go: a drill as an absorbing Markov chain over the states of a run.
 *
 * <p>Belongs here: forecasts of runs and duels for a player's make rates, and the drill that is a fair test. The rules of
 * play are the drill room's own: the chain is explored by playing them. Does not belong here: how make rates are found.
 */
package org.cupbeam.studio.insight.run;

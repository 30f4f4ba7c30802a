/**
 * A league's tables: who comes before whom, week by week and over all weeks.
 *
 * <p>Belongs here: the weeks, what a player's runs of a week come to, places, and which studios have yet to be heard, as functions
 * of what the store found; and what was worked out before, for as long as it holds. Does not belong here: SQL (see
 * {@code store.league}), and clocks.
 */
package org.cupbeam.studio.league;

package org.cupbeam.event;

/**
 * Where in the play an attempt was made.
 *
 * @param run       the run's id
 * @param duel      the duel's id; null outside a duel
 * @param player    who putted
 * @param drill     the drill's name
 * @param station   from 1
 * @param stationMm the station's distance from the hole, positive
 * @param visit     the how-manieth stay at a station of this run, from 1
 * @param ball      the how-manieth attempt of the visit, from 1
 * @param ballsLeft still to putt in this visit, after this attempt and its penalty, before any move
 */
public record Play(String run, String duel, String player, String drill, int station, double stationMm, int visit,
                   int ball, int ballsLeft) {
}

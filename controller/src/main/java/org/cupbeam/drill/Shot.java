package org.cupbeam.drill;

/**
 * One attempt as the rules took it.
 *
 * @param run       the run after it, moved on where it moves
 * @param visit     the how-manieth stay at a station of the run, from 1
 * @param station   putted from, from 1
 * @param ball      the how-manieth attempt of its visit, from 1
 * @param ballsLeft still to putt in that visit, after the attempt and its penalty, before any move
 * @param overshot  it missed beyond the limit
 */
public record Shot(Run run, int visit, int station, int ball, int ballsLeft, boolean overshot) {
}

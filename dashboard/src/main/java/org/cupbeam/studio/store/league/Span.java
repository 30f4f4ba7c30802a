package org.cupbeam.studio.store.league;

/**
 * A week of a league.
 *
 * @param number from 1
 * @param fromMs when it begins, ms since 1970
 * @param toMs   when it is over, ms since 1970
 */
public record Span(int number, long fromMs, long toMs) {
}

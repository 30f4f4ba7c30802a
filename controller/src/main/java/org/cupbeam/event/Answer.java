package org.cupbeam.event;

/**
 * What a lane says to a command.
 *
 * @param id       the command's
 * @param accepted done, or refused
 * @param reason   why refused, and what would do; null when accepted
 * @param sequence the score's, after the command
 */
public record Answer(String id, boolean accepted, String reason, long sequence) {
}

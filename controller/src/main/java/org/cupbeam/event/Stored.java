package org.cupbeam.event;

/**
 * How far the host has stored everything of a journal.
 *
 * @param journal  the journal's id
 * @param sequence everything up to here is stored; 0: nothing
 */
public record Stored(String journal, long sequence) {
}

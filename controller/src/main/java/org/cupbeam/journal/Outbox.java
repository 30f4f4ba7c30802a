package org.cupbeam.journal;

import java.util.List;

/** The journal as whoever publishes it sees it. Safe to use from any thread. */
public interface Outbox {
    /** The journal's id. */
    String id();

    /** The sequence of the last event that is on disk; 0: none. Never waits. */
    long last();

    /** The host has said that it stored everything up to here. Never waits. */
    long stored();

    /**
     * Takes the host's word for how far it stored. It may go back: a host that lost its store gets again what is still
     * kept.
     *
     * @return false, and nothing taken, for a sequence that this journal has not reached
     */
    boolean stored(long sequence);

    /** The oldest events after a sequence, in order. */
    List<Row> after(long sequence, int max) throws JournalException;

    /** How many events are left of journals that this lane had before, and that the host may lack. Never waits. */
    long left();

    /** The oldest of those, as they were: with them the host is to do as with any that it may have already. */
    List<Row> leftBehind(int max) throws JournalException;

    /** The host has said how far it has stored a journal other than this one. */
    void storedOf(String journal, long sequence) throws JournalException;

    /** The next number for a connection to the broker, never used before, not even by an earlier process. */
    long nextConnection() throws JournalException;

    /**
     * One event.
     *
     * @param payload as published, byte for byte
     */
    record Row(long sequence, byte[] payload) {
    }
}

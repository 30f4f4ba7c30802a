package org.cupbeam.studio.store;

/**
 * Where and when an event that is being kept belongs.
 *
 * @param journal  the journal's row
 * @param lane     the lane's row
 * @param sequence the event's number
 * @param when     its time and the start of the machine that it belongs to
 */
record Context(int journal, int lane, long sequence, Boots.When when) {
    long atMs() {
        return when.atMs();
    }
}

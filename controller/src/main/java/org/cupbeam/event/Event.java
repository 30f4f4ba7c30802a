package org.cupbeam.event;

import java.time.Instant;

/**
 * One event, as the journal has it and the wire carries it. Equal source and sequence is the same event.
 *
 * @param source   lane and journal
 * @param sequence the journal's number, from 1; order is this, never time
 * @param time     the wall clock, right or not (see the data's stamp)
 * @param data     what happened
 */
public record Event(Source source, long sequence, Instant time, Data data) {
}

/**
 * From the broker to the store: each lane's events once, in order, and word back of how far they are kept.
 *
 * <p>Belongs here: the connection to the broker, the order of a journal's events, the batches, what becomes of messages
 * that make no sense. Does not belong here: SQL (the store implements {@link org.cupbeam.studio.ingest.EventLog}) and
 * whatever is shown.
 *
 * <p>Threads: the client's own threads only put messages into bounded queues; one thread ({@code feed}) connects,
 * subscribes and publishes; one ({@code intake}) puts events in order and commits them; one ({@code news}) hands
 * scores, health and answers on, so that a slow disk never holds up a board.
 */
package org.cupbeam.studio.ingest;

/**
 * The lane's durable log and outbox.
 *
 * <p>Belongs here: what must survive a power cut, in SQLite, one writer, and the threads that may wait for a disk.
 * Does not belong here: the network, or what the inputs and events mean.
 */
package org.cupbeam.journal;

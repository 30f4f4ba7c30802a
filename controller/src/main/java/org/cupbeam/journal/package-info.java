/**
 * The lane's durable log and outbox.
 *
 * <p>Belongs here: what must survive a power cut, in SQLite, one writer. Does not belong here: the network.
 */
package org.cupbeam.journal;

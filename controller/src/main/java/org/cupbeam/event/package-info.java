/**
 * The wire contract: event types, topics, and their JSON.
 *
 * <p>Belongs here: what another program may read or send. Does not belong here: sending it (see {@code link}) or
 * keeping it (see {@code journal}).
 */
package org.cupbeam.event;

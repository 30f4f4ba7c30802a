/**
 * The lane's MQTT link: connecting, sending the outbox in order, commands in and answers out.
 *
 * <p>Belongs here: everything that touches the MQTT client. Does not belong here: what the messages say
 * (see {@code event}).
 */
package org.cupbeam.link;

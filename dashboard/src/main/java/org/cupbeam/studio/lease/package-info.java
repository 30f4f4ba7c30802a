/**
 * Whose turn it is, where several hosts share one PostgreSQL: which of those at a broker keeps events, and which may write now.
 *
 * <p>Belongs here: the lease of a site, its succession from host to host, and the pen. Does not belong here: what is written
 * (see {@code store}), which this room knows nothing of but a connection to the database.
 */
package org.cupbeam.studio.lease;

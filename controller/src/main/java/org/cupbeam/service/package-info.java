/**
 * The service manager of the machine, systemd as a rule: what it is told of this process.
 *
 * <p>Belongs here: that manager's protocol. Does not belong here: when the lane is ready or well, which {@code lane} and the
 * commands know; the form of the log (see {@code log}).
 */
package org.cupbeam.service;

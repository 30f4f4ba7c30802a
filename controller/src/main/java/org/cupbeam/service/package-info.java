/**
 * The service manager of the machine, systemd as a rule: what it is told of this process, and when the process leaves it to start
 * another one.
 *
 * <p>Belongs here: that manager's protocol, and ending by a fault. Does not belong here: when the lane is ready or well, which {@code lane} and the
 * commands know; the form of the log (see {@code log}).
 */
package org.cupbeam.service;

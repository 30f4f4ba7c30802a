/**
 * The service manager of the machine, systemd as a rule: what it is told of this process; and the forms in which log lines reach
 * its journal, or whatever collects them.
 *
 * <p>Belongs here: that manager's protocol, and how a line is laid out for a machine. Does not belong here: when the lane is ready or well, which {@code lane} and
 * the commands know.
 */
package org.cupbeam.service;

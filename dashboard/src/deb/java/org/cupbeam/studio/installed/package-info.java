/**
 * The package as it is installed on a machine: a small Debian of its own, booted with its own systemd.
 *
 * <p>Belongs here: that machine, and what is seen on it. Does not belong here: anything that can be seen without installing.
 */
package org.cupbeam.studio.installed;

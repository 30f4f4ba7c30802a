/**
 * In what form the lines of the log leave the process: as a person reads them, or laid out for whoever collects them.
 *
 * <p>Belongs here: reading a line that was made for a person, and writing it anew for a machine. Does not belong here: what is
 * logged, and at which level, which each room knows of itself.
 */
package org.cupbeam.log;

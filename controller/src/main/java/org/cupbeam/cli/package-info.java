/**
 * The commands, one class each.
 *
 * <p>Belongs here: options, help, exit codes, words for a terminal. Does not belong here: work; a command calls the
 * room that does it.
 */
package org.cupbeam.cli;

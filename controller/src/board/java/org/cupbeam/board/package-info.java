/**
 * The real controller on an emulated board: an arm64 kernel in QEMU, whose GPIO lines are driven from here. Compiled and run by
 * the Maven profile {@code board} alone.
 *
 * <p>Belongs here: the machine, its pins, what its kernel took of them, whoever listens to it, and what it is held to. Does not
 * belong here: anything that could be tried without a kernel.
 */
package org.cupbeam.board;

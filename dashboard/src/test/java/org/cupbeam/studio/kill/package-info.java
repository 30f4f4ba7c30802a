/**
 * The programs themselves, lane, broker and host, each a process of its own, and what becomes of the putts when they are
 * killed, fill their disks or run for long.
 */
package org.cupbeam.studio.kill;

package org.cupbeam.event;

import org.cupbeam.drill.Worded;

/**
 * When something happened, as far as a board without a battery clock can tell.
 *
 * @param boot        the id of the start of the machine (Linux: {@code /proc/sys/kernel/random/boot_id})
 * @param monotonicNs the kernel's monotonic clock since that start; the only time that intervals are made of
 * @param clock       whether the wall clock could be believed at that moment
 */
public record Stamp(String boot, long monotonicNs, Clock clock) {

    /** Whether the wall clock has been set from outside since the start. */
    public enum Clock implements Worded { SYNCHRONISED, UNSYNCHRONISED }
}

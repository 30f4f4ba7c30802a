package org.cupbeam.fuzz;

import java.lang.management.ManagementFactory;

/** One input given to a target on this thread, held to its bounds. */
public final class Trial {
    private static final com.sun.management.ThreadMXBean THREADS =
            (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
    private static final int REASON_MAX = 4_000;

    private Trial() {
    }

    /**
     * Gives it the input, and holds it to its bounds of time and memory.
     *
     * @return what it said of it
     * @throws AssertionError where it failed otherwise than by refusing it, took too long or too much, or gave no reason
     */
    public static String of(Target target, byte[] input) {
        long bytes = THREADS.getCurrentThreadAllocatedBytes();
        long cpuNs = THREADS.getCurrentThreadCpuTime();
        String said = unbounded(target, input);
        long tookMs = (THREADS.getCurrentThreadCpuTime() - cpuNs) / 1_000_000;
        long allocated = THREADS.getCurrentThreadAllocatedBytes() - bytes;
        if (tookMs > target.mostMs()) {
            throw new AssertionError(target.name() + ": " + tookMs + " ms of a processor, at most " + target.mostMs());
        }
        if (allocated > target.mostBytes()) {
            throw new AssertionError(target.name() + ": allocated " + allocated + " bytes, at most " + target.mostBytes());
        }
        return said;
    }

    /** The same, where something else watches over time and memory. */
    static String unbounded(Target target, byte[] input) {
        try {
            return reason(target, target.take(input));
        } catch (Throwable escaped) {
            throw new AssertionError(target.name() + ": " + escaped, escaped);
        }
    }

    /** A reason can be shown on a terminal and in a log: not without end, and nothing in it that either would act on. */
    private static String reason(Target target, String said) {
        if (!said.equals(Target.ACCEPTED) && (said.isBlank() || said.equals("null"))) {
            throw new AssertionError(target.name() + ": refused without a reason");
        }
        if (said.length() > REASON_MAX) {
            throw new AssertionError(target.name() + ": a reason of " + said.length() + " characters: "
                    + said.substring(0, 200));
        }
        int odd = said.codePoints().filter(each -> each != '\n' && (Character.isISOControl(each)
                || Character.getType(each) == Character.SURROGATE)).findFirst().orElse(-1);
        if (odd >= 0) {
            throw new AssertionError(String.format("%s: a reason with U+%04X in it: %s", target.name(), odd, said));
        }
        return said;
    }
}

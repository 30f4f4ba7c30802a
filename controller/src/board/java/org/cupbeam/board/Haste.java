package org.cupbeam.board;

import java.io.IOException;

/**
 * Puts processes before all others of this computer while edges are played, where it lets: a board whose emulator has to wait
 * for a processor misses pulses that a real one has all the time in the world for.
 */
final class Haste implements AutoCloseable {
    private static final String DRIVER = "30";
    private static final String DEVICES = "20";
    private static final String PROCESSORS = "10";

    private final ProcessHandle emulator;
    private final boolean granted;

    /** The emulator, its own devices before its processors, and this process before both. */
    Haste(ProcessHandle emulator) throws IOException, InterruptedException {
        this.emulator = emulator;
        granted = schedule("-a", "-f", PROCESSORS, emulator) && schedule("-v", "-f", DEVICES, emulator)
                && schedule("-a", "-f", DRIVER, ProcessHandle.current());
    }

    boolean granted() {
        return granted;
    }

    /** @param which "-a" for all of a process's threads, "-v" for its first alone */
    private static boolean schedule(String which, String policy, String priority, ProcessHandle process)
            throws IOException, InterruptedException {
        try {
            return new ProcessBuilder("chrt", which, policy, "-p", priority, Long.toString(process.pid()))
                    .redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start().waitFor() == 0;
        } catch (IOException noSuchProgram) {
            return false;
        }
    }

    @Override
    public void close() throws IOException, InterruptedException {
        schedule("-a", "-o", "0", emulator);
        schedule("-a", "-o", "0", ProcessHandle.current());
    }
}

package org.cupbeam.board;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Puts processes before all others of this computer while edges are played, where it lets: a board whose emulator has to wait
 * for a processor misses pulses that a real one has all the time in the world for.
 *
 * <p>Who drives, and the emulator's devices, which have little to do, come before all else. The emulator's processors may want all
 * there is for as long as the board is busy, and whatever does so before all else is held up for 50 ms each second by Linux, for the
 * others' sake: twice as long as a pulse. So they get the largest share instead.
 */
final class Haste implements AutoCloseable {
    private static final String DRIVER = "30";
    private static final String DEVICES = "20";
    private static final int LARGEST_SHARE = -20;

    private final ProcessHandle emulator;
    private final boolean granted;

    Haste(ProcessHandle emulator) throws IOException, InterruptedException {
        this.emulator = emulator;
        granted = share(LARGEST_SHARE, emulator) && schedule("-v", "-f", DEVICES, emulator)
                && schedule("-a", "-f", DRIVER, ProcessHandle.current());
    }

    boolean granted() {
        return granted;
    }

    /** Of all of a process's threads. */
    private static boolean share(int nice, ProcessHandle process) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of("renice", "-n", Integer.toString(nice), "-p"));
        try (var threads = Files.list(Path.of("/proc", Long.toString(process.pid()), "task"))) {
            threads.map(each -> each.getFileName().toString()).forEach(command::add);
        }
        return run(command);
    }

    /** @param which "-a" for all of a process's threads, "-v" for its first alone */
    private static boolean schedule(String which, String policy, String priority, ProcessHandle process)
            throws IOException, InterruptedException {
        return run(List.of("chrt", which, policy, "-p", priority, Long.toString(process.pid())));
    }

    private static boolean run(List<String> command) throws IOException, InterruptedException {
        try {
            return new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start()
                    .waitFor() == 0;
        } catch (IOException noSuchProgram) {
            return false;
        }
    }

    @Override
    public void close() throws IOException, InterruptedException {
        schedule("-a", "-o", "0", emulator);
        share(0, emulator);
        schedule("-a", "-o", "0", ProcessHandle.current());
    }
}

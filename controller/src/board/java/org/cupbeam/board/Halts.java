package org.cupbeam.board;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.locks.LockSupport;

/**
 * When a processor of this computer stood still. What takes the processors of a virtual computer away for some hundredths of a second
 * does so whatever comes before what on it, and the emulated board then sees its lines late or not at all. On each processor a
 * thread wakes up every millisecond and notes when it was not woken.
 */
final class Halts implements AutoCloseable {
    /** Longer than whatever else here keeps a thread from running that comes before all else. */
    private static final long HALT_NS = 5_000_000;
    private static final long WAKES_EVERY_NS = 1_000_000;
    private static final String NAME = "halts-";

    private record Halt(long fromNs, long toNs) {
    }

    private final List<Halt> halts = Collections.synchronizedList(new ArrayList<>());
    private volatile boolean isOver;

    Halts() throws IOException, InterruptedException {
        for (int i = 0; i < Runtime.getRuntime().availableProcessors(); i++) {
            Thread thread = new Thread(this::watch, NAME + i);
            thread.setDaemon(true);
            thread.start();
            pin(thread.getName(), i);
        }
    }

    private void watch() {
        long lastNs = System.nanoTime();
        while (!isOver) {
            LockSupport.parkNanos(WAKES_EVERY_NS);
            long nowNs = System.nanoTime();
            if (nowNs - lastNs > HALT_NS) {
                halts.add(new Halt(lastNs, nowNs));
            }
            lastNs = nowNs;
        }
    }

    /** The longest that began or went on between two times by {@link System#nanoTime()}, ns; 0 for none. */
    long between(long fromNs, long toNs) {
        synchronized (halts) {
            return halts.stream().filter(each -> each.toNs > fromNs && each.fromNs < toNs).mapToLong(each -> each.toNs - each.fromNs).max().orElse(0);
        }
    }

    /** Linux knows a thread by its name too. */
    private static void pin(String name, int processor) throws IOException, InterruptedException {
        try (var threads = Files.list(Path.of("/proc/self/task"))) {
            for (Path each : threads.toList()) {
                if (isCalled(each, name)) {
                    new ProcessBuilder("taskset", "-cp", Integer.toString(processor), each.getFileName().toString())
                            .redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start().waitFor();
                }
            }
        }
    }

    private static boolean isCalled(Path thread, String name) throws IOException {
        try {
            return Files.readString(thread.resolve("comm")).strip().equals(name);
        } catch (NoSuchFileException ended) {
            return false;
        }
    }

    @Override
    public void close() {
        isOver = true;
    }
}

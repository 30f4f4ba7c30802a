package org.cupbeam.cli;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.LongConsumer;
import java.util.function.LongSupplier;

/** How far long work has got, on one line of a terminal; says nothing where standard error is none. */
final class Progress implements LongConsumer, AutoCloseable {
    private static final long FIRST_NS = 1_000_000_000;
    private static final long EVERY_NS = 200_000_000;

    private final PrintStream err;
    private final String what;
    private final long total;
    private final boolean shown;
    private final LongSupplier nanoTime;
    private long nextNs;
    private boolean written;

    Progress(PrintStream err, boolean shown, String what, long total, LongSupplier nanoTime) {
        this.err = err;
        this.what = what;
        this.total = total;
        this.shown = shown;
        this.nanoTime = nanoTime;
        nextNs = nanoTime.getAsLong() + FIRST_NS;
    }

    static Progress onTerminal(String what, long total) {
        return new Progress(System.err, errIsTerminal(), what, total, System::nanoTime);
    }

    /** Java's own console wants all three streams; the kernel knows of each. */
    private static boolean errIsTerminal() {
        try {
            String target = Files.readSymbolicLink(Path.of("/proc/self/fd/2")).toString();
            return target.startsWith("/dev/pts/") || target.startsWith("/dev/tty");
        } catch (IOException | RuntimeException unknown) {
            return System.console() != null;
        }
    }

    @Override
    public void accept(long done) {
        if (!shown) {
            return;
        }
        long now = nanoTime.getAsLong();
        if (now >= nextNs) {
            nextNs = now + EVERY_NS;
            written = true;
            err.printf("\r%s: %d of %d MB (%d %%)", what, done / 1_000_000, total / 1_000_000,
                    total == 0 ? 100 : 100 * done / total);
            err.flush();
        }
    }

    @Override
    public void close() {
        if (written) {
            err.print("\r\033[K");
            err.flush();
        }
    }
}

package org.cupbeam.bench;

import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.stream.Stream;

/** What was measured, on the screen and in {@code target/bench/report.txt}. */
final class Report implements AutoCloseable {
    private final Path folder;
    private final PrintStream file;

    /** @param folder takes the report, and whatever the benchmarks need a place for */
    Report(Path folder) throws IOException {
        this.folder = Files.createDirectories(folder);
        file = new PrintStream(Files.newOutputStream(folder.resolve("report.txt")), true, StandardCharsets.UTF_8);
        line("%s, %d cores, Linux %s, Java %s", processor(), Runtime.getRuntime().availableProcessors(),
                System.getProperty("os.version"), System.getProperty("java.runtime.version"));
    }

    private static String processor() throws IOException {
        try (Stream<String> lines = Files.lines(Path.of("/proc/cpuinfo"))) {
            return lines.filter(each -> each.startsWith("model name")).findFirst()
                    .map(each -> each.substring(each.indexOf(':') + 1).strip()).orElse(System.getProperty("os.arch"));
        }
    }

    /** A place for a file of this name. */
    Path file(String name) {
        return folder.resolve(name);
    }

    /** Begins a part; how much else the machine has to do is said with it. */
    void title(String title) {
        line("%n%s (load average %.1f)", title,
                ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
    }

    void line(String format, Object... what) {
        String line = String.format(Locale.ROOT, format, what);
        System.out.println(line);
        file.println(line);
    }

    @Override
    public void close() {
        file.close();
    }
}

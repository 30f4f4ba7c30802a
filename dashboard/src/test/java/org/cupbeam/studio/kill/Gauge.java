package org.cupbeam.studio.kill;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * What a process holds, as the kernel and, where it is one of Java's, its own tools tell it.
 *
 * @param residentKb memory resident, KiB
 * @param files      file handles
 * @param threads    of the system
 * @param heapKb     live objects, KiB, after a full collection; 0 where there is no heap
 */
record Gauge(long residentKb, int files, int threads, long heapKb) {
    private static final Pattern USED = Pattern.compile("(?:generation|tenured).*?used (\\d+)K");

    static Gauge of(long pid, boolean java) throws IOException, InterruptedException {
        long heapKb = 0;
        if (java) {
            ask(pid, "GC.run");
            heapKb = USED.matcher(ask(pid, "GC.heap_info")).results()
                    .mapToLong(each -> Long.parseLong(each.group(1))).sum();
        }
        Path process = Path.of("/proc/" + pid);
        try (Stream<Path> files = Files.list(process.resolve("fd"))) {
            String status = Files.readString(process.resolve("status"));
            return new Gauge(number("VmRSS", status), (int) files.count(), (int) number("Threads", status), heapKb);
        }
    }

    private static long number(String key, String status) {
        Matcher line = Pattern.compile(key + ":\\s+(\\d+)").matcher(status);
        if (!line.find()) {
            throw new IllegalStateException(key + " is not in: " + status);
        }
        return Long.parseLong(line.group(1));
    }

    private static String ask(long pid, String what) throws IOException, InterruptedException {
        Process jcmd = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "jcmd").toString(),
                Long.toString(pid), what).redirectErrorStream(true).start();
        String said = new String(jcmd.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (jcmd.waitFor() != 0) {
            throw new IOException("jcmd " + what + ": " + said);
        }
        return said;
    }
}

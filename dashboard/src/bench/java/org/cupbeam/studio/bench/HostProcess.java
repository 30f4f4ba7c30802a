package org.cupbeam.studio.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The packaged host in a process of its own. */
final class HostProcess implements AutoCloseable {
    static final List<String> FLAGS = List.of("-Xmx64m", "-Xss512k", "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1");

    final int port;
    private final Process process;

    HostProcess(Path folder, String brokerUri) throws IOException {
        this(folder, brokerUri, List.of(), List.of());
    }

    /** @param flags of the JVM, and arguments of the host, beyond the usual ones */
    HostProcess(Path folder, String brokerUri, List<String> flags, List<String> arguments) throws IOException {
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = free.getLocalPort();
        }
        List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()));
        command.addAll(FLAGS);
        command.addAll(flags);
        command.addAll(List.of("-jar", Path.of("target", "cupbeam-studio.jar").toString(), "--broker", brokerUri, "--port",
                "" + port, "--data", folder.toString()));
        command.addAll(arguments);
        process = new ProcessBuilder(command).redirectErrorStream(true).start();
        BufferedReader out = process.inputReader();
        String line = out.readLine();
        while (line != null && !line.contains("Studio at")) {
            line = out.readLine();
        }
        if (line == null) {
            throw new IOException("the host ended before it was ready");
        }
        Thread rest = new Thread(() -> tell(out), "host-log");
        rest.setDaemon(true);
        rest.start();
    }

    private static void tell(BufferedReader out) {
        try {
            out.lines().filter(each -> !each.contains("INFO")).forEach(each -> System.out.println("host: " + each));
        } catch (UncheckedIOException ended) {
            // With the host its words end.
        }
    }

    ProcessHandle handle() {
        return process.toHandle();
    }

    /** Resident memory as Linux has it, as {@code VmRSS} or its peak {@code VmHWM}, in MB of 1,000,000 bytes. */
    double residentMb(String what) throws IOException {
        return Files.readAllLines(Path.of("/proc", "" + process.pid(), "status")).stream()
                .filter(line -> line.startsWith(what + ":")).findFirst()
                .map(line -> Long.parseLong(line.replaceAll("\\D", "")) * 1024 / 1e6).orElse(Double.NaN);
    }

    @Override
    public void close() throws IOException {
        process.destroy();
        try {
            process.waitFor(20, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        process.destroyForcibly();
    }
}

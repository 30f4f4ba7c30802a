package org.cupbeam.board;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.cupbeam.Outside;

/** The emulated board, and its console. Inside it, this machine's loopback is 10.0.2.2. */
final class Machine implements AutoCloseable {
    static final String HOST = "10.0.2.2";
    private static final int UP_WITHIN_S = 90;
    private static final Pattern STATUS = Pattern.compile("<<(\\d+)>>");

    private final Process process;
    private final Writer console;
    private final BlockingQueue<String> says = new LinkedBlockingQueue<>();
    private final Path qmp;
    private final Path qtest;

    /** What a command came to. */
    record Outcome(int status, List<String> out) {
    }

    /**
     * Boots, with one processor: emulated ones stop each other for up to 20 ms, at which a ball's pulse is stamped too late.
     *
     * @param folder with a short path, for its sockets
     */
    Machine(Image image, int memoryMb, Path folder) throws IOException, InterruptedException {
        qmp = folder.resolve("qmp");
        qtest = folder.resolve("qtest");
        List<String> command = new ArrayList<>(List.of(Outside.program("qemu-system-aarch64"), "-M", "virt",
                "-cpu", "cortex-a72", "-m", Integer.toString(memoryMb), "-smp", "1", "-accel", "tcg",
                "-nographic", "-no-reboot", "-monitor", "none",
                "-serial", "stdio", "-netdev", "user,id=n", "-device", "virtio-net-pci,netdev=n,romfile=",
                "-qmp", "unix:" + qmp + ",server=on,wait=off", "-qtest", "unix:" + qtest + ",server=on,wait=off",
                "-qtest-log", "none"));
        command.addAll(image.arguments());
        process = new ProcessBuilder(command).redirectErrorStream(true).start();
        console = process.outputWriter();
        Thread listener = new Thread(this::listen, "console");
        listener.setDaemon(true);
        listener.start();
        await(Pattern.compile("board: up"), UP_WITHIN_S, new ArrayList<>());
    }

    /** Does this on the board's shell, and waits until it is done. */
    Outcome run(String command, int withinS) throws IOException, InterruptedException {
        console.write(command + "\n");
        console.flush();
        List<String> out = new ArrayList<>();
        Matcher status = await(STATUS, withinS, out);
        return new Outcome(Integer.parseInt(status.group(1)), out);
    }

    /** Puts the machine, and whoever drives it, before all else. */
    Haste haste() throws IOException, InterruptedException {
        return new Haste(process.toHandle());
    }

    Path qmp() {
        return qmp;
    }

    Path qtest() {
        return qtest;
    }

    private Matcher await(Pattern word, int withinS, List<String> before) throws InterruptedException {
        long untilNs = System.nanoTime() + TimeUnit.SECONDS.toNanos(withinS);
        for (String line; (line = says.poll(untilNs - System.nanoTime(), TimeUnit.NANOSECONDS)) != null;) {
            Matcher matcher = word.matcher(line);
            if (matcher.find()) {
                return matcher;
            }
            before.add(line);
        }
        throw new AssertionError("the board has not said " + word + " within " + withinS + " s, but " + before);
    }

    private void listen() {
        try (BufferedReader lines = process.inputReader()) {
            lines.lines().map(line -> line.replace("\r", "")).forEach(says::add);
        } catch (IOException | UncheckedIOException ended) {
            says.add("(the console has ended)");
        }
    }

    @Override
    public void close() throws InterruptedException {
        process.toHandle().destroy();
        if (!process.waitFor(10, TimeUnit.SECONDS)) {
            process.destroyForcibly();
        }
    }
}

package org.cupbeam.board;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.UnixDomainSocketAddress;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.LockSupport;

/** The machine's GPIO lines, driven from outside by QEMU's qtest protocol. One thread at a time. */
final class Pins implements AutoCloseable {
    private static final String PLACE = "/machine/unattached";
    private static final long SPIN_NS = 500_000;
    private static final long LEAD_NS = 20_000_000;
    /** PL061, raw interrupt status, at the place that the virt machine gives it: a bit stays until the kernel has taken its edge. */
    private static final String PENDING = "readl 0x9030414";
    private static final long TAKEN_WITHIN_NS = 50_000_000;
    /** From taking an edge to looking at the level, which the kernel does in a thread. */
    private static final long LOOKED_AT_NS = 1_000_000;

    private final SocketChannel socket;
    private final BufferedReader answers;
    private final String device;
    private final Machine machine;
    private boolean hasty = true;

    /**
     * An edge that was driven.
     *
     * @param atNs when the emulator was told, by {@link System#nanoTime()}
     */
    record Driven(Edge edge, long atNs) {
    }

    Pins(Machine machine) throws IOException {
        this.machine = machine;
        device = find(machine.qmp());
        socket = SocketChannel.open(UnixDomainSocketAddress.of(machine.qtest()));
        answers = new BufferedReader(new InputStreamReader(Channels.newInputStream(socket), StandardCharsets.US_ASCII));
    }

    /** Sets a line's level. */
    void set(int line, boolean high) throws IOException {
        ask("set_irq_in " + device + " unnamed-gpio-in " + line + " " + (high ? 1 : 0));
    }

    private String ask(String question) throws IOException {
        tell(socket, question);
        String answer = answers.readLine();
        if (answer == null || !answer.startsWith("OK")) {
            throw new IOException("the emulator answers " + answer);
        }
        return answer;
    }

    /**
     * Plays edges in real time; their channels are the lines' numbers, active is high. Where the board is held up, a line's next
     * edge waits until the kernel has taken the one before.
     */
    List<Driven> play(List<Edge> edges) throws IOException, InterruptedException {
        try (Haste haste = machine.haste()) {
            hasty &= haste.granted();
            return playNow(edges);
        }
    }

    /** Whether all playing went before whatever else this computer did. */
    boolean hasty() {
        return hasty;
    }

    private List<Driven> playNow(List<Edge> edges) throws IOException {
        List<Driven> driven = new ArrayList<>();
        long startNs = System.nanoTime() + LEAD_NS - edges.get(0).timeNs();
        for (int i = 0; i < edges.size(); i++) {
            Edge edge = edges.get(i);
            waitUntil(startNs + edge.timeNs());
            driven.add(new Driven(edge, System.nanoTime()));
            set(edge.channel(), edge.active());
            if (i + 1 < edges.size() && edges.get(i + 1).channel() == edge.channel()) {
                awaitTaken(edge.channel());
                waitUntil(System.nanoTime() + LOOKED_AT_NS);
            }
        }
        return driven;
    }

    private void awaitTaken(int line) throws IOException {
        long untilNs = System.nanoTime() + TAKEN_WITHIN_NS;
        while ((Long.decode(ask(PENDING).substring("OK ".length())) >> line & 1) != 0 && System.nanoTime() < untilNs) {
            LockSupport.parkNanos(SPIN_NS);
        }
    }

    private static void waitUntil(long dueNs) {
        for (long leftNs; (leftNs = dueNs - System.nanoTime()) > 0;) {
            if (leftNs > SPIN_NS) {
                LockSupport.parkNanos(leftNs - SPIN_NS);
            } else {
                Thread.onSpinWait();
            }
        }
    }

    private static String find(Path qmp) throws IOException {
        ObjectMapper json = new ObjectMapper();
        try (SocketChannel socket = SocketChannel.open(UnixDomainSocketAddress.of(qmp));
                BufferedReader says = new BufferedReader(
                        new InputStreamReader(Channels.newInputStream(socket), StandardCharsets.UTF_8))) {
            says.readLine(); // its greeting
            tell(socket, "{\"execute\":\"qmp_capabilities\"}");
            says.readLine();
            tell(socket, "{\"execute\":\"qom-list\",\"arguments\":{\"path\":\"" + PLACE + "\"}}");
            for (JsonNode each : json.readTree(says.readLine()).path("return")) {
                if (each.path("type").asText().contains("pl061")) {
                    return PLACE + "/" + each.path("name").asText();
                }
            }
        }
        throw new IOException("the machine has no GPIO chip");
    }

    private static void tell(SocketChannel socket, String line) throws IOException {
        ByteBuffer bytes = ByteBuffer.wrap((line + "\n").getBytes(StandardCharsets.US_ASCII));
        while (bytes.hasRemaining()) {
            socket.write(bytes);
        }
    }

    @Override
    public void close() throws IOException {
        socket.close();
    }
}

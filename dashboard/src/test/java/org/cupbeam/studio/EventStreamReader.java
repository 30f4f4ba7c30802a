package org.cupbeam.studio;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;

/** Reads a stream of server-sent events as a board would, noting when each came. */
final class EventStreamReader implements AutoCloseable {
    record Said(String id, String event, String data, long atNs) {
    }

    private final Socket socket;
    private final Map<String, String> headers = new HashMap<>();
    private final BlockingQueue<Said> said = new LinkedBlockingQueue<>();

    EventStreamReader(int port, String path) throws IOException {
        socket = new Socket("127.0.0.1", port);
        // HTTP/1.0, so that nothing comes in chunks.
        socket.getOutputStream().write(("GET " + path + " HTTP/1.0\r\nHost: localhost\r\n\r\n")
                .getBytes(StandardCharsets.US_ASCII));
        BufferedReader lines = new BufferedReader(
                new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
        for (String line = lines.readLine(); line != null && !line.isEmpty(); line = lines.readLine()) {
            int colon = line.indexOf(": ");
            if (colon > 0) {
                headers.put(line.substring(0, colon).toLowerCase(Locale.ROOT), line.substring(colon + 2));
            }
        }
        Thread reader = new Thread(() -> read(lines), "stream-reader");
        reader.setDaemon(true);
        reader.start();
    }

    String header(String name) {
        return headers.get(name.toLowerCase(Locale.ROOT));
    }

    /** The next event of a kind; others are passed over. */
    Said await(String event) throws InterruptedException {
        long untilNs = System.nanoTime() + TimeUnit.SECONDS.toNanos(15);
        while (System.nanoTime() < untilNs) {
            Said next = said.poll(100, TimeUnit.MILLISECONDS);
            if (next != null && next.event().equals(event)) {
                return next;
            }
        }
        throw new AssertionError("no " + event + " came within 15 s");
    }

    @Override
    public void close() {
        try {
            socket.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void read(BufferedReader lines) {
        String id = "";
        String event = "";
        String data = "";
        try {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                if (line.isEmpty()) {
                    said.add(new Said(id, event, data, System.nanoTime()));
                    event = "";
                } else if (line.startsWith("id: ")) {
                    id = line.substring(4);
                } else if (line.startsWith("event: ")) {
                    event = line.substring(7);
                } else if (line.startsWith("data: ")) {
                    data = line.substring(6);
                }
            }
        } catch (IOException e) {
            said.add(new Said(id, "over", e.toString(), System.nanoTime()));
        }
    }
}

package org.cupbeam.studio.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import org.cupbeam.event.Topics;

/** A board left open: its stream read as it comes, in a thread of its own, the time of each score noted. */
final class OpenBoard implements AutoCloseable {
    private static final String MARK = "\"sequence\":\"";
    private static final int DIGITS = 16;

    final Arrivals arrivals;
    private final Socket socket;
    private volatile boolean open;

    OpenBoard(int port, Topics lane) throws IOException {
        this(port, lane, new Arrivals());
    }

    /** @param arrivals to note its scores in */
    OpenBoard(int port, Topics lane, Arrivals arrivals) throws IOException {
        this.arrivals = arrivals;
        socket = new Socket("127.0.0.1", port);
        // HTTP/1.0, so that nothing comes in chunks.
        socket.getOutputStream().write(("GET /live/" + lane.studio() + "/" + lane.lane()
                + " HTTP/1.0\r\nHost: localhost\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
        BufferedReader lines = new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
        String status = lines.readLine();
        if (status == null || !status.contains(" 200")) {
            throw new IOException("the board's stream answers " + status);
        }
        open = true;
        Thread reader = new Thread(() -> read(lines), "board " + lane.lane());
        reader.setDaemon(true);
        reader.start();
    }

    /** Whether the host has not let it go. */
    boolean isOpen() {
        return open;
    }

    private void read(BufferedReader lines) {
        try {
            boolean score = false;
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                if (line.startsWith("event: ")) {
                    score = line.equals("event: score");
                } else if (score && line.startsWith("data: ")) {
                    arrivals.came(sequence(line), System.nanoTime());
                }
            }
        } catch (IOException e) {
            System.err.println("a board: " + e);
        }
        open = false;
    }

    /** The first in a score is the score's own. */
    static long sequence(String score) {
        int at = score.indexOf(MARK) + MARK.length();
        return Long.parseLong(score.substring(at, at + DIGITS));
    }

    @Override
    public void close() throws IOException {
        socket.close();
    }
}

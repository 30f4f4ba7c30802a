package org.cupbeam.studio;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** A line to a port of this machine that can be cut, in mid-message as it comes, and mended. */
final class CutLine implements AutoCloseable {
    private final ServerSocket server = new ServerSocket(0, 16, InetAddress.getLoopbackAddress());
    private final Set<Socket> open = ConcurrentHashMap.newKeySet();
    private final int to;
    private volatile boolean cut;

    CutLine(int to) throws IOException {
        this.to = to;
        daemon(this::accept);
    }

    int port() {
        return server.getLocalPort();
    }

    void cut() throws IOException {
        cut = true;
        for (Socket each : open) {
            each.close();
        }
    }

    void mend() {
        cut = false;
    }

    private void accept() {
        while (!server.isClosed()) {
            try {
                Socket near = server.accept();
                if (cut) {
                    near.close();
                    continue;
                }
                Socket far = new Socket("127.0.0.1", to);
                open.add(near);
                open.add(far);
                daemon(() -> pass(near, far));
                daemon(() -> pass(far, near));
            } catch (IOException e) {
                // Whoever called is not answered; the test's own waits tell.
            }
        }
    }

    private void pass(Socket from, Socket into) {
        try (from; into) {
            InputStream in = from.getInputStream();
            OutputStream out = into.getOutputStream();
            byte[] bytes = new byte[4_096];
            for (int read = in.read(bytes); read > 0 && !cut; read = in.read(bytes)) {
                out.write(bytes, 0, read);
            }
        } catch (IOException ended) {
            // With the line.
        }
        open.remove(from);
    }

    private static void daemon(Runnable work) {
        Thread thread = new Thread(work, "line");
        thread.setDaemon(true);
        thread.start();
    }

    @Override
    public void close() throws IOException {
        server.close();
        cut();
    }
}

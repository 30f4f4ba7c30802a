package org.cupbeam.studio.web;

import java.io.IOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;

/** Requests as no well-behaved client writes them. */
final class Raw {
    private Raw() {
    }

    /** The whole answer to a GET of this very path, under this very name of the host. */
    static String get(int port, String path, String host, String... headers) throws IOException {
        try (Socket socket = new Socket("127.0.0.1", port)) {
            socket.setSoTimeout(5_000);
            String more = headers.length == 0 ? "" : String.join("\r\n", headers) + "\r\n";
            socket.getOutputStream().write(("GET " + path + " HTTP/1.1\r\nHost: " + host + "\r\n" + more
                    + "Connection: close\r\n\r\n").getBytes(StandardCharsets.ISO_8859_1));
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    static int status(String answer) {
        return Integer.parseInt(answer.split(" ", 3)[1]);
    }
}

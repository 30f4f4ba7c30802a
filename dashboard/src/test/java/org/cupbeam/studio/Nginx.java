package org.cupbeam.studio;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** A real nginx, set up from the file of docs/proxy with a certificate of its own making. */
final class Nginx implements AutoCloseable {
    private static final Path DOCS = Path.of("..", "docs", "proxy", "nginx.conf");

    final int tlsPort = freePort();
    final int plainPort = freePort();
    final Path certificate;
    private final Process process;
    private final Path log;

    /** @param hostPort where the pages are */
    Nginx(Path folder, int hostPort) throws Exception {
        String program = Tools.path("nginx").toString();
        certificate = folder.resolve("cupbeam.pem");
        log = folder.resolve("nginx.log");
        run("openssl", "req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:P-256", "-nodes", "-days", "2",
                "-subj", "/CN=localhost", "-addext", "subjectAltName=DNS:localhost", "-keyout",
                folder.resolve("cupbeam.key").toString(), "-out", certificate.toString());
        Files.writeString(folder.resolve("cupbeam.conf"), Files.readString(DOCS)
                .replace("listen 80;", "listen 127.0.0.1:" + plainPort + ";")
                .replace("listen 443 ", "listen 127.0.0.1:" + tlsPort + " ")
                .replace("server_name studio", "server_name localhost")
                .replace("127.0.0.1:8080", "127.0.0.1:" + hostPort).replace("/etc/nginx/", folder + "/"));
        Files.writeString(folder.resolve("nginx.conf"), "daemon off;\nuser root;\nworker_processes 1;\npid " + folder
                + "/nginx.pid;\nerror_log stderr;\nevents { worker_connections 256; }\nhttp {\n access_log off;\n"
                + temporary(folder) + " include cupbeam.conf;\n}\n");
        process = new ProcessBuilder(program, "-p", folder.toString(), "-c", folder.resolve("nginx.conf").toString())
                .redirectErrorStream(true).redirectOutput(log.toFile()).start();
        awaitOpen();
    }

    private static String temporary(Path folder) {
        StringBuilder lines = new StringBuilder();
        for (String each : new String[] {"client_body", "proxy", "fastcgi", "uwsgi", "scgi"}) {
            lines.append(' ').append(each).append("_temp_path ").append(folder).append("/temp;\n");
        }
        return lines.toString();
    }

    private static void run(String... command) throws Exception {
        Process run = new ProcessBuilder(command).redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
        if (!run.waitFor(30, TimeUnit.SECONDS) || run.exitValue() != 0) {
            throw new IOException(String.join(" ", command) + " failed");
        }
    }

    private void awaitOpen() throws Exception {
        for (int tries = 0; tries < 200 && process.isAlive(); tries++) {
            try (Socket open = new Socket("127.0.0.1", tlsPort)) {
                return;
            } catch (IOException notYet) {
                TimeUnit.MILLISECONDS.sleep(50);
            }
        }
        throw new IOException("nginx did not start: " + Files.readString(log));
    }

    private static int freePort() {
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return free.getLocalPort();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @Override
    public void close() throws Exception {
        process.destroy();
        if (!process.waitFor(10, TimeUnit.SECONDS)) {
            process.destroyForcibly();
        }
    }
}

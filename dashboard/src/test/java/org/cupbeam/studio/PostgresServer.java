package org.cupbeam.studio;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;

/**
 * A PostgreSQL server of the tests' own, in a temporary folder, gone with the JVM. Where the machine has none, tests
 * are skipped and say so; where tools are required (CUPBEAM_REQUIRE_TOOLS=1) they fail.
 */
public final class PostgresServer {
    private static final AtomicInteger DATABASES = new AtomicInteger();
    private static final String GUARDED = "guarded";
    private static PostgresServer running;

    private final int port;
    private final List<String> asUser;
    private final Path bin;
    private final Path data;

    private PostgresServer(Path bin) throws IOException, InterruptedException {
        this.bin = bin;
        this.asUser = "root".equals(System.getProperty("user.name"))
                ? List.of("runuser", "-u", "postgres", "--") : List.of();
        Path home = Files.createTempDirectory("cupbeam-postgres");
        this.data = home.resolve("data");
        try (ServerSocket free = new ServerSocket(0)) {
            this.port = free.getLocalPort();
        }
        if (!asUser.isEmpty()) {
            run(List.of("chown", "postgres", home.toString()));
        }
        run(as("initdb", "-D", data.toString(), "-U", "cupbeam", "-A", "trust", "-E", "UTF8", "--no-sync"));
        Path admits = data.resolve("pg_hba.conf");
        Files.writeString(admits, "host all " + GUARDED + " 127.0.0.1/32 scram-sha-256\n" + Files.readString(admits));
        Runtime.getRuntime().addShutdownHook(new Thread(this::stop));
        run(as("pg_ctl", "-D", data.toString(), "-w", "-l", home.resolve("log").toString(), "-o",
                "-p " + port + " -c listen_addresses=127.0.0.1 -k " + home, "start"));
    }

    /** The URL of an empty database, made for the caller. */
    public static synchronized String emptyDatabase() {
        Path bin = bin();
        try {
            if (running == null) {
                running = new PostgresServer(bin);
            }
            return running.create("test" + DATABASES.incrementAndGet());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException | SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Where its programs are. */
    public static Path bin() {
        return findBin().orElseGet(() -> Tools.missing("PostgreSQL's initdb"));
    }

    /** The URL, without the password, of an empty database whose owner has one. */
    public static synchronized String guardedDatabase(String password) {
        String url = emptyDatabase();
        try (Connection connection = DriverManager.getConnection(url)) {
            connection.createStatement().execute("CREATE ROLE " + GUARDED + " LOGIN PASSWORD '" + password + "'");
            connection.createStatement().execute("ALTER DATABASE " + connection.getCatalog() + " OWNER TO " + GUARDED);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
        return url.replace("user=cupbeam", "user=" + GUARDED);
    }

    private String create(String name) throws SQLException {
        try (Connection connection = DriverManager.getConnection(url("postgres"))) {
            connection.createStatement().execute("CREATE DATABASE " + name);
        }
        return url(name);
    }

    private String url(String database) {
        return "jdbc:postgresql://127.0.0.1:" + port + "/" + database + "?user=cupbeam";
    }

    private void stop() {
        try {
            run(as("pg_ctl", "-D", data.toString(), "-m", "immediate", "stop"));
            run(List.of("rm", "-rf", data.getParent().toString()));
        } catch (IOException e) {
            System.err.println("stopping PostgreSQL: " + e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private List<String> as(String program, String... arguments) {
        List<String> command = new ArrayList<>(asUser);
        command.add(bin.resolve(program).toString());
        command.addAll(List.of(arguments));
        return command;
    }

    private static void run(List<String> command) throws IOException, InterruptedException {
        File output = File.createTempFile("cupbeam", ".log");
        Process process = new ProcessBuilder(command).directory(new File("/")).redirectErrorStream(true)
                .redirectOutput(output).start();
        if (!process.waitFor(60, TimeUnit.SECONDS) || process.exitValue() != 0) {
            throw new IOException(command + ": " + Files.readString(output.toPath()));
        }
        Files.delete(output.toPath());
    }

    private static Optional<Path> findBin() {
        Path debian = Path.of("/usr/lib/postgresql");
        try (Stream<Path> versions = Files.isDirectory(debian) ? Files.list(debian) : Stream.empty()) {
            Stream<Path> onPath = Stream.of(System.getenv("PATH").split(File.pathSeparator)).map(Path::of);
            return Stream.concat(versions.map(version -> version.resolve("bin")).sorted(), onPath)
                    .filter(bin -> Files.isExecutable(bin.resolve("initdb"))
                            && Files.isExecutable(bin.resolve("pg_ctl"))).findFirst();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

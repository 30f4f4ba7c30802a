package org.cupbeam.studio.installed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;

/**
 * A machine to install on: Debian with systemd as its first process, a network of its own that leads nowhere, and a disk on
 * which whatever is written is gone afterwards. Wants root, mmdebstrap and systemd-nspawn; the bare system is fetched once,
 * by the mirrors that this machine's apt has.
 */
final class Box implements AutoCloseable {
    /** The folder, in the machine, of the files that were brought. */
    static final String TAKEN = "/srv/";

    private static final Path TARGET = Path.of("target").toAbsolutePath();
    private static final Path TREE = TARGET.resolve("box-tree");
    private static final String PACKAGES = "systemd,systemd-sysv,dbus,adduser,udev,iproute2,openjdk-17-jre-headless";

    private final Path disk;
    private final Path root;
    private Process machine;
    private String leader;

    private Box(Path disk) {
        this.disk = disk;
        this.root = disk.resolve("root");
    }

    static Box boot() throws IOException, InterruptedException {
        assumeTrue("root".equals(System.getProperty("user.name")), "a machine in a namespace is for root to start");
        for (String tool : List.of("mmdebstrap", "systemd-nspawn", "nsenter", "curl")) {
            assumeTrue(Stream.of(System.getenv("PATH").split(File.pathSeparator))
                    .anyMatch(folder -> Files.isExecutable(Path.of(folder, tool))), tool + " is not installed");
        }
        if (!Files.isDirectory(TREE)) {
            Path half = TARGET.resolve("box-tree-half");
            run("rm", "-rf", half.toString());
            run("mmdebstrap", "--quiet", "--variant=minbase", "--include=" + PACKAGES, "bookworm", half.toString());
            Files.move(half, TREE);
        }
        Box box = new Box(Files.createTempDirectory("cupbeam-box"));
        box.start();
        return box;
    }

    private void start() throws IOException, InterruptedException {
        run("mount", "-t", "tmpfs", "cupbeam-box", disk.toString());
        for (String folder : List.of("upper", "work", "root")) {
            Files.createDirectory(disk.resolve(folder));
        }
        run("mount", "-t", "overlay", "cupbeam-box", "-o", "lowerdir=" + TREE + ",upperdir=" + disk.resolve("upper")
                + ",workdir=" + disk.resolve("work"), root.toString());
        machine = new ProcessBuilder("systemd-nspawn", "--directory=" + root, "--register=no", "--keep-unit",
                "--private-network", "--boot", "--console=pipe").redirectErrorStream(true)
                .redirectInput(ProcessBuilder.Redirect.from(new File("/dev/null")))
                .redirectOutput(TARGET.resolve("box.log").toFile()).start();
        until(Duration.ofSeconds(60), () -> machine.children().findFirst().isPresent());
        leader = Long.toString(machine.children().findFirst().orElseThrow().pid());
        until(Duration.ofSeconds(60), () -> tried("systemctl", "is-system-running").contains("running"));
        in("ip", "link", "set", "lo", "up");
    }

    /** A file of this machine's, put there. */
    void take(Path file) throws IOException {
        Files.copy(file, file(TAKEN).resolve(file.getFileName().toString()));
    }

    Path file(String path) {
        return root.resolve(path.substring(1));
    }

    void write(String path, String text) throws IOException {
        Files.createDirectories(file(path).getParent());
        Files.writeString(file(path), text);
    }

    /** What a command says in the machine, where it must go well. */
    String in(String... command) throws IOException, InterruptedException {
        return run(inside(command));
    }

    /** What it says, well or not. */
    String tried(String... command) {
        try {
            return said(new ProcessBuilder(inside(command)).redirectErrorStream(true).start());
        } catch (IOException e) {
            return e.toString();
        }
    }

    /** What the pages say to a program in the machine; empty where they don't. */
    String page(String path) {
        try {
            return said(new ProcessBuilder("nsenter", "--target", leader, "--net", "curl", "--silent", "--location", "--max-time", "5",
                    "http://127.0.0.1:8080" + path).start());
        } catch (IOException e) {
            return "";
        }
    }

    private String[] inside(String... command) {
        List<String> line = new ArrayList<>(List.of("nsenter", "--target", leader, "--all", "env", "-i",
                "PATH=/usr/sbin:/usr/bin:/sbin:/bin", "LANG=C.UTF-8", "DEBIAN_FRONTEND=noninteractive"));
        line.addAll(List.of(command));
        return line.toArray(String[]::new);
    }

    static String run(String... command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String said = said(process);
        assertThat(process.waitFor()).as("%s said: %s", String.join(" ", command), said).isZero();
        return said;
    }

    private static String said(Process process) throws IOException {
        process.getOutputStream().close();
        return new String(process.getInputStream().readAllBytes()).strip();
    }

    static void until(Duration patience, BooleanSupplier true_) throws InterruptedException {
        Instant end = Instant.now().plus(patience);
        while (!true_.getAsBoolean()) {
            assertThat(Instant.now()).as("waited for %s", patience).isBefore(end);
            TimeUnit.MILLISECONDS.sleep(200);
        }
    }

    @Override
    public void close() throws IOException, InterruptedException {
        if (machine != null) {
            machine.children().forEach(ProcessHandle::destroyForcibly);
            machine.destroyForcibly().waitFor();
        }
        run("umount", "--lazy", root.toString());
        run("umount", "--lazy", disk.toString());
        Files.delete(disk);
    }
}

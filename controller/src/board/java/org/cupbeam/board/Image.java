package org.cupbeam.board;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.cupbeam.Outside;
import org.junit.jupiter.api.Assumptions;

/**
 * What the machine boots from: Debian's packages, made once, and the files of a test.
 *
 * @param initrd its files, to be unpacked into memory; or, on a {@code disk}, those of a disk
 */
record Image(Path kernel, Path tree, Path initrd, boolean disk) {
    private static final Path MACHINE = Path.of("src", "board", "machine");
    private static final long MADE_WITHIN_MIN = 15;
    private static final int DISK_MB = 800;

    /** Makes it in the folder; skips the test where the packages are not to be had. */
    static Image make(Path folder) throws IOException, InterruptedException {
        List.of("qemu-system-aarch64", "dtc", "fdtput", "cpio", "dpkg-deb", "apt-get").forEach(Outside::program);
        Files.createDirectories(folder);
        Path log = folder.resolve("build.log");
        boolean made = run(log, MACHINE, MACHINE.resolve("build.sh").toAbsolutePath().toString(),
                folder.toAbsolutePath().toString()) == 0;
        if (!made && "1".equals(System.getenv("CUPBEAM_REQUIRE_TOOLS"))) {
            throw new AssertionError("the board's image could not be made; see " + log);
        }
        Assumptions.assumeTrue(made, "the board's image could not be made; see " + log);
        return new Image(folder.resolve("kernel"), folder.resolve("board.dtb"), folder.resolve("base.cpio"), false);
    }

    /** The same with the files below the folder in it, and the machine's first process. */
    Image with(Path files, Path initrdToBe) throws IOException, InterruptedException {
        Files.copy(MACHINE.resolve("init"), files.resolve("init"), StandardCopyOption.REPLACE_EXISTING,
                StandardCopyOption.COPY_ATTRIBUTES);
        Path archive = initrdToBe.resolveSibling("files.cpio").toAbsolutePath();
        Path log = initrdToBe.resolveSibling("files.log");
        if (run(log, files, "sh", "-c", "find . | cpio -o -H newc > '" + archive + "'") != 0) {
            throw new IOException("cpio fails; see " + log);
        }
        try (OutputStream out = Files.newOutputStream(initrdToBe)) {
            Files.copy(initrd, out);
            Files.copy(archive, out);
        }
        return new Image(kernel, tree, initrdToBe, false);
    }

    /** The same on a disk, as on a board with a card: its files take no memory but what is read of them. */
    Image onDisk(Path files, Path diskToBe) throws IOException, InterruptedException {
        Files.copy(MACHINE.resolve("init"), files.resolve("init"), StandardCopyOption.REPLACE_EXISTING,
                StandardCopyOption.COPY_ATTRIBUTES);
        Path log = diskToBe.resolveSibling("disk.log");
        String script = "rm -rf \"$3.d\" && mkdir \"$3.d\" && cd \"$3.d\" && cpio -idm --quiet < \"$1\" && cp -a \"$2/.\" ."
                + " && rm -f \"$3\" && mke2fs -q -t ext4 -d . \"$3\" " + DISK_MB + "M && rm -rf \"$3.d\"";
        if (run(log, files, "sh", "-c", script, "sh", initrd.toAbsolutePath().toString(), files.toAbsolutePath().toString(),
                diskToBe.toAbsolutePath().toString()) != 0) {
            throw new IOException("no disk could be made; see " + log);
        }
        return new Image(kernel, tree, diskToBe, true);
    }

    /** What the emulator is told of it. */
    List<String> arguments() {
        String console = "console=ttyAMA0 quiet ";
        return disk ? List.of("-kernel", kernel.toString(), "-dtb", tree.toString(),
                "-append", console + "root=/dev/nvme0n1 rw rootwait init=/init",
                "-drive", "if=none,id=card,format=raw,file=" + initrd, "-device", "nvme,drive=card,serial=card")
                : List.of("-kernel", kernel.toString(), "-dtb", tree.toString(), "-append", console + "rdinit=/init",
                "-initrd", initrd.toString());
    }

    private static int run(Path log, Path in, String... command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).directory(in.toFile()).redirectErrorStream(true)
                .redirectOutput(log.toFile()).start();
        if (!process.waitFor(MADE_WITHIN_MIN, TimeUnit.MINUTES)) {
            process.destroyForcibly();
            throw new IOException(command[0] + " does not end; see " + log);
        }
        return process.exitValue();
    }
}

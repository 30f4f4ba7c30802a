package org.cupbeam.studio.web.access;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Optional;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** One line in a file of its own, for its owner alone. Written whole or not at all. */
final class PinFile {
    private static final Logger LOG = LoggerFactory.getLogger(PinFile.class);
    private static final Set<PosixFilePermission> OWNER_ONLY = PosixFilePermissions.fromString("rw-------");
    private static final int LONGEST_BYTES = 512;
    /** Stands for a file that is there and cannot be read; no hash looks so. */
    static final String UNREADABLE = "unreadable";

    private final Path path;

    PinFile(Path path) {
        this.path = path;
    }

    Path path() {
        return path;
    }

    /** What it holds now; empty only where there is no such file. */
    Optional<String> text() {
        try {
            byte[] bytes = Files.size(path) > LONGEST_BYTES ? new byte[0] : Files.readAllBytes(path);
            String text = new String(bytes, StandardCharsets.US_ASCII).strip();
            return Optional.of(text.isEmpty() ? UNREADABLE : text);
        } catch (NoSuchFileException e) {
            return Optional.empty();
        } catch (IOException e) {
            LOG.error("the staff PIN cannot be read ({}): nobody can sign in", e.toString());
            return Optional.of(UNREADABLE);
        }
    }

    synchronized void write(String text) throws IOException {
        Path folder = path.toAbsolutePath().getParent();
        Path fresh = Files.createTempFile(folder, "staff-pin", ".new", ownerOnly(folder));
        try {
            try (FileChannel to = FileChannel.open(fresh, StandardOpenOption.WRITE)) {
                ByteBuffer bytes = ByteBuffer.wrap((text + "\n").getBytes(StandardCharsets.US_ASCII));
                while (bytes.hasRemaining()) {
                    to.write(bytes);
                }
                to.force(true);
            }
            Files.move(fresh, path, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(fresh);
        }
    }

    synchronized boolean delete() throws IOException {
        return Files.deleteIfExists(path);
    }

    private static FileAttribute<?>[] ownerOnly(Path folder) throws IOException {
        boolean posix = Files.getFileStore(folder).supportsFileAttributeView("posix");
        return posix ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(OWNER_ONLY)}
                : new FileAttribute<?>[0];
    }
}

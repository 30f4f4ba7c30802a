package org.cupbeam.cli;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** A rig file on its way to the disk: written beside, then moved into its place whole; what was there is kept as .bak. */
final class RigDraft {
    private RigDraft() {
    }

    /**
     * Whether it could be written, found out before anybody has rolled a ball for it. Nothing stays behind.
     *
     * @throws Refusal where it is a folder, or in none
     */
    static void tryOut(Path file) throws IOException, Refusal {
        Refusal.ofFolder(file, "a rig file");
        Path folder = file.toAbsolutePath().getParent();
        if (!Files.isDirectory(folder)) {
            throw new Refusal(file + ": there is no folder " + folder + "; make it, or name another file with --rig");
        }
        try {
            Files.delete(Files.createTempFile(folder, ".", ".new"));
        } catch (IOException unwritable) {
            throw new IOException(file + " could not be written at the end (" + unwritable.getMessage() + "); see the permissions of "
                    + folder + ", or name another file with --rig", unwritable);
        }
    }

    /** @return where what was there is now; null where nothing was */
    static Path write(Path file, String text) throws IOException {
        Path folder = file.toAbsolutePath().getParent();
        Path beside = folder.resolve("." + file.getFileName() + ".new");
        try {
            try (FileChannel out = FileChannel.open(beside, StandardOpenOption.CREATE, StandardOpenOption.TRUNCATE_EXISTING,
                    StandardOpenOption.WRITE)) {
                ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
                while (bytes.hasRemaining()) {
                    out.write(bytes);
                }
                out.force(true);
            }
            Path kept = null;
            if (Files.exists(file)) {
                kept = file.resolveSibling(file.getFileName() + ".bak");
                Files.copy(file, kept, StandardCopyOption.REPLACE_EXISTING);
            }
            Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            return kept;
        } finally {
            Files.deleteIfExists(beside);
        }
    }
}

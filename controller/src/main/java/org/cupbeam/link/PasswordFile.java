package org.cupbeam.link;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/** A secret in a file that nobody but its owner may read. */
public final class PasswordFile {
    private static final Set<PosixFilePermission> OWNERS = EnumSet.of(PosixFilePermission.OWNER_READ,
            PosixFilePermission.OWNER_WRITE, PosixFilePermission.OWNER_EXECUTE);
    private static final int LONGEST_BYTES = 4_096;

    private PasswordFile() {
    }

    /**
     * The first line.
     *
     * @throws IllegalArgumentException for a file that others may read, or that holds no password, with what would do
     */
    public static String read(Path file) throws IOException {
        Optional<String> objection = objection(file);
        if (objection.isPresent()) {
            throw new IllegalArgumentException(objection.get());
        }
        if (Files.size(file) > LONGEST_BYTES) {
            throw new IllegalArgumentException(file + ": is no password, it is longer than " + LONGEST_BYTES + " bytes");
        }
        String line = new String(Files.readAllBytes(file), StandardCharsets.UTF_8).lines().findFirst().orElse("");
        if (line.isEmpty()) {
            throw new IllegalArgumentException(file + ": its first line is empty; write the password there");
        }
        return line;
    }

    /**
     * What speaks against keeping a secret in this file: that its group or others may read or write it. Nothing does on
     * a file system that knows no such permissions.
     *
     * @throws IOException where there is no such file
     */
    public static Optional<String> objection(Path file) throws IOException {
        PosixFileAttributeView view = Files.getFileAttributeView(file, PosixFileAttributeView.class, new LinkOption[0]);
        if (view == null) {
            return Optional.empty();
        }
        Set<PosixFilePermission> given = view.readAttributes().permissions();
        return OWNERS.containsAll(given) ? Optional.empty() : Optional.of(file + ": others than its owner may get at it ("
                + PosixFilePermissions.toString(given) + "); chmod 600 " + file);
    }
}

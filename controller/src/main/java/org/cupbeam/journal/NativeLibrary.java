package org.cupbeam.journal;

import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.sqlite.SQLiteJDBCLoader;
import org.sqlite.util.OSInfo;

/**
 * SQLite's native library, unpacked once beside the journal. Left to itself the driver unpacks it anew at each start
 * and compares the two byte by byte, which takes longer than everything else that a start does.
 */
final class NativeLibrary {
    private static final Logger LOG = LoggerFactory.getLogger(NativeLibrary.class);
    private static final String PATH = "org.sqlite.lib.path";
    private static final String NAME = "org.sqlite.lib.name";

    private NativeLibrary() {
    }

    /** Before the first connection of the process; where it does not work out, the driver's own way remains. */
    static synchronized void unpackInto(Path folder) {
        if (System.getProperty(PATH) != null) {
            return;
        }
        String name = System.mapLibraryName("sqlitejdbc");
        String inside = "/org/sqlite/native/" + OSInfo.getNativeLibFolderPathForCurrentOS() + "/" + name;
        Path own = folder.resolve("sqlite-" + SQLiteJDBCLoader.getVersion());
        try (InputStream packed = NativeLibrary.class.getResourceAsStream(inside)) {
            if (packed == null) {
                return;
            }
            byte[] library = packed.readAllBytes();
            if (!isThere(own.resolve(name), library)) {
                write(own, name, library);
            }
            System.setProperty(PATH, own.toAbsolutePath().toString());
            System.setProperty(NAME, name);
        } catch (IOException e) {
            LOG.info("{}: cannot keep SQLite's library ({}); starting will take a little longer", own, e.toString());
        }
    }

    private static boolean isThere(Path file, byte[] library) throws IOException {
        return Files.exists(file) && Arrays.equals(Files.readAllBytes(file), library);
    }

    private static void write(Path folder, String name, byte[] library) throws IOException {
        Files.createDirectories(folder);
        Path half = Files.createTempFile(folder, name, ".half");
        Files.write(half, library);
        try (FileChannel channel = FileChannel.open(half, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
        Files.move(half, folder.resolve(name), StandardCopyOption.ATOMIC_MOVE);
    }
}

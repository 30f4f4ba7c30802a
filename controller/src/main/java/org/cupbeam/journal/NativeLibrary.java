package org.cupbeam.journal;

import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
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
        String system = OSInfo.getNativeLibFolderPathForCurrentOS();
        Path own = folder.resolve("sqlite-" + SQLiteJDBCLoader.getVersion() + "-" + system.replace('/', '-'));
        try {
            if (Files.exists(own.resolve(name)) || write(own, name, "/org/sqlite/native/" + system + "/" + name)) {
                System.setProperty(PATH, own.toAbsolutePath().toString());
                System.setProperty(NAME, name);
            }
        } catch (IOException e) {
            LOG.info("{}: cannot keep SQLite's library ({}); starting will take a little longer", own, e.toString());
        }
    }

    /** Whole or not at all, so that a file that is there needs no second look; false where there is none for us. */
    private static boolean write(Path folder, String name, String inside) throws IOException {
        try (InputStream packed = NativeLibrary.class.getResourceAsStream(inside)) {
            if (packed == null) {
                return false;
            }
            Files.createDirectories(folder);
            Path half = Files.createTempFile(folder, name, ".half");
            Files.copy(packed, half, StandardCopyOption.REPLACE_EXISTING);
            try (FileChannel channel = FileChannel.open(half, StandardOpenOption.WRITE)) {
                channel.force(true);
            }
            Files.move(half, folder.resolve(name), StandardCopyOption.ATOMIC_MOVE);
            return true;
        }
    }
}

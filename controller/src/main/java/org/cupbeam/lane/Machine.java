package org.cupbeam.lane;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.UUID;

/**
 * What the machine says of itself, in files under {@code /proc} and {@code /run}, which are no disk's.
 *
 * @param root where its files begin: {@code /}, but for a test
 * @param boot the id of its start
 */
record Machine(Path root, String boot) {

    static Machine own() {
        return at(Path.of("/"));
    }

    static Machine at(Path root) {
        return new Machine(root, bootOf(root));
    }

    private static String bootOf(Path root) {
        try {
            return Files.readString(root.resolve("proc/sys/kernel/random/boot_id")).strip();
        } catch (IOException notLinux) {
            return UUID.randomUUID().toString();
        }
    }

    /**
     * Whether the wall clock can be believed: it has been set from the network, or the machine is no board, and so has a
     * clock that goes on without power. Whoever keeps a board's time with another program than systemd's makes the file
     * {@code /run/cupbeam/clock-synchronised}.
     */
    boolean clockIsBelieved() {
        return Files.exists(root.resolve("run/systemd/timesync/synchronized"))
                || Files.exists(root.resolve("run/cupbeam/clock-synchronised"))
                || !Files.exists(root.resolve("proc/device-tree/model"));
    }
}

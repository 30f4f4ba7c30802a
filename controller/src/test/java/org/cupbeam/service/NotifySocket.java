package org.cupbeam.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.sun.jna.Library;
import com.sun.jna.Native;
import com.sun.jna.Platform;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;

/** What systemd hands to a service for its messages: a datagram socket of the Unix kind. The layout is that of unix(7). */
final class NotifySocket implements AutoCloseable {
    private static final int AF_UNIX = 1;
    private static final int SOCK_DGRAM = 2;
    private static final int PATH_MAX = 107;

    private final Path path;
    private final int descriptor;

    private NotifySocket(Path path, int descriptor) {
        this.path = path;
        this.descriptor = descriptor;
    }

    static NotifySocket at(Path path) {
        assumeTrue(Platform.isLinux(), "systemd runs on Linux alone");
        byte[] name = path.toString().getBytes(StandardCharsets.UTF_8);
        assertThat(name.length).isLessThan(PATH_MAX);
        byte[] address = Arrays.copyOf(new byte[] {AF_UNIX, 0}, 2 + PATH_MAX + 1);
        System.arraycopy(name, 0, address, 2, name.length);
        int descriptor = C.LIBRARY.socket(AF_UNIX, SOCK_DGRAM, 0);
        assertThat(C.LIBRARY.bind(descriptor, address, address.length)).isZero();
        return new NotifySocket(path, descriptor);
    }

    Path path() {
        return path;
    }

    /** The next message; waits for it. */
    String next() {
        byte[] message = new byte[4096];
        long length = C.LIBRARY.recv(descriptor, message, message.length, 0);
        assertThat(length).isPositive();
        return new String(message, 0, (int) length, StandardCharsets.UTF_8);
    }

    /** The next one that is another than this. */
    String nextBut(String passedOver) {
        String message = next();
        while (message.equals(passedOver)) {
            message = next();
        }
        return message;
    }

    @Override
    public void close() {
        C.LIBRARY.close(descriptor);
    }

    interface C extends Library {
        C LIBRARY = Native.load("c", C.class);

        int socket(int domain, int type, int protocol);

        int bind(int descriptor, byte[] address, int length);

        long recv(int descriptor, byte[] into, long length, int flags);

        int close(int descriptor);
    }
}

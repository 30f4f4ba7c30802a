package org.cupbeam.service;

import com.sun.jna.Library;
import com.sun.jna.Native;
import java.util.Map;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Whoever started this process as a service and restarts it when it dies or falls silent. It is told by the protocol of
 * {@code sd_notify(3)}; where nobody wants to be told, nothing is done and nothing is loaded.
 */
public final class Overseer {
    private static final Logger LOG = LoggerFactory.getLogger(Overseer.class);
    private static final int STATUS_MAX = 200;

    private final Consumer<String> wire;

    /** @param wire takes a message of the protocol; does not throw */
    Overseer(Consumer<String> wire) {
        this.wire = wire;
    }

    /** That of this process: a service manager that named its socket in the environment, or nobody. */
    public static Overseer ofThisProcess() {
        return of(System.getenv());
    }

    static Overseer of(Map<String, String> environment) {
        return new Overseer(environment.getOrDefault("NOTIFY_SOCKET", "").isEmpty() ? message -> { } : systemd());
    }

    /** The process does its work from now on. What it says of itself is shown by {@code systemctl status}. */
    public void ready(String status) {
        String line = status.replaceAll("\\p{Cntrl}", " ");
        wire.accept("READY=1\nSTATUS=" + line.substring(0, Math.min(line.length(), STATUS_MAX)));
    }

    /** It is well. To be said more often than twice in the unit's {@code WatchdogSec}. */
    public void well() {
        wire.accept("WATCHDOG=1");
    }

    /** It ends because it was asked to. */
    public void stopping() {
        wire.accept("STOPPING=1");
    }

    /** A machine without the library still runs the lane; its manager then waits in vain, and says so. */
    private static Consumer<String> systemd() {
        try {
            Systemd library = Native.load("libsystemd.so.0", Systemd.class);
            return message -> {
                int told = library.sd_notify(0, message);
                if (told < 0) {
                    LOG.warn("the service manager cannot be told ({}); error {} of sd_notify", message, -told);
                }
            };
        } catch (UnsatisfiedLinkError missing) {
            LOG.error("the service manager cannot be told anything: {}; install libsystemd0", missing.getMessage());
            return message -> { };
        }
    }

    /** The part of libsystemd that is used. */
    interface Systemd extends Library {
        /** @return more than 0: told; 0: nobody to tell; less: an error number, negative */
        int sd_notify(int forgetSocket, String message);
    }
}

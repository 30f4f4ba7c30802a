package org.cupbeam.studio;

import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.net.UnknownHostException;
import java.nio.file.Path;
import org.cupbeam.studio.web.access.Proxies;
import org.cupbeam.studio.web.access.ScrapeToken;
import org.cupbeam.studio.web.access.StaffPin;

/**
 * Where a host's pages are to be had.
 *
 * @param address of this machine, to listen on
 * @param port    0 for any that is free
 * @param pin     that staff sign in with
 * @param proxies that pass others in
 * @param scraper  who may have the metrics beside staff
 */
public record Door(String address, int port, StaffPin pin, Proxies proxies, ScrapeToken scraper) {
    static final String HERE = "127.0.0.1";
    static final String PIN_FILE = "staff-pin";

    /** A door that no proxy stands before. */
    public Door(String address, int port, StaffPin pin) {
        this(address, port, pin, Proxies.NONE);
    }

    public Door(String address, int port, StaffPin pin, Proxies proxies) {
        this(address, port, pin, proxies, ScrapeToken.NONE);
    }

    /** A door for this machine alone, the PIN in the folder of all data. */
    public static Door here(int port, Path folder) {
        return at(HERE, port, folder, Proxies.NONE, ScrapeToken.NONE);
    }

    static Door at(String address, int port, Path folder, Proxies proxies, ScrapeToken scraper) {
        return new Door(address, port, new StaffPin(folder.resolve(PIN_FILE)), proxies, scraper);
    }

    /** @throws IllegalStateException where others could come in, and no PIN would keep them out */
    void check() {
        if (!isShut() && !pin.isSet()) {
            throw new IllegalStateException("no staff PIN is set, so the pages are for this computer alone");
        }
    }

    /** Whether nobody can come in but from this machine, nor be passed in. An address that is none lets nobody in either. */
    private boolean isShut() {
        try {
            return proxies.isNone() && InetAddress.getByName(address).isLoopbackAddress();
        } catch (UnknownHostException e) {
            return true;
        }
    }

    /** Whether this machine has the address. */
    boolean isHere() {
        try {
            InetAddress found = InetAddress.getByName(address);
            return found.isAnyLocalAddress() || found.isLoopbackAddress() || NetworkInterface.getByInetAddress(found) != null;
        } catch (UnknownHostException | SocketException e) {
            return false;
        }
    }
}

package org.cupbeam.studio.web.access;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * The reverse proxies that are believed when they say for whom they ask. Anybody can write such words into a request:
 * from any other address they mean nothing.
 *
 * @param addresses of the proxies, as the host sees them; empty where there is none
 */
public record Proxies(Set<InetAddress> addresses) {
    public static final Proxies NONE = new Proxies(Set.of());
    /** No name is taken for an address: looking it up would ask somebody else. */
    private static final Pattern ADDRESS = Pattern.compile("\\d{1,3}(\\.\\d{1,3}){3}|[0-9a-fA-F:.]*:[0-9a-fA-F:.]*");
    private static final int LONGEST_ADDRESS = 45;

    public Proxies {
        addresses = Set.copyOf(addresses);
    }

    /** @throws IllegalArgumentException for what is no address, with what would do */
    public static Proxies at(List<String> addresses) {
        Set<InetAddress> found = new LinkedHashSet<>();
        for (String each : addresses) {
            found.add(address(each).orElseThrow(() -> new IllegalArgumentException(
                    each + ": is no address of a proxy; give one as 127.0.0.1 or fd00::7")));
        }
        return new Proxies(found);
    }

    public boolean isNone() {
        return addresses.isEmpty();
    }

    /** Whether a request from this address is from one of them. */
    public boolean include(String peer) {
        return !isNone() && address(peer).filter(addresses::contains).isPresent();
    }

    /**
     * Whom a proxy asks for: the last one that it names, since what comes before that was told to it by its own caller.
     *
     * @param forwarded the last X-Forwarded-For of the request; null for none
     * @return empty where it names nobody
     */
    public static Optional<String> caller(String forwarded) {
        if (forwarded == null) {
            return Optional.empty();
        }
        String last = forwarded.substring(forwarded.lastIndexOf(',') + 1).strip();
        return address(last).map(InetAddress::getHostAddress);
    }

    private static Optional<InetAddress> address(String text) {
        if (text.length() > LONGEST_ADDRESS || !ADDRESS.matcher(text).matches()) {
            return Optional.empty();
        }
        try {
            return Optional.of(InetAddress.getByName(text));
        } catch (UnknownHostException e) {
            return Optional.empty();
        }
    }
}

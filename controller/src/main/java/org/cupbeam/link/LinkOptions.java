package org.cupbeam.link;

import java.net.URI;
import java.nio.file.Path;
import java.util.Set;

/**
 * Where the broker is, and how to be let in.
 *
 * @param broker   {@code tcp://host:1883}, or {@code ssl://host:8883} for TLS
 * @param user     null where the broker asks for none
 * @param password null where the broker asks for none
 * @param trusted  PEM file of the certificates to trust for TLS; null for the Java platform's own
 */
public record LinkOptions(String broker, String user, String password, Path trusted) {

    /** @throws IllegalArgumentException for an address that none can be reached by, with what would do */
    public LinkOptions {
        URI uri;
        try {
            uri = URI.create(broker);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(broker + ": is no address; give tcp://host:1883 or ssl://host:8883", e);
        }
        if (!Set.of("tcp", "ssl").contains(String.valueOf(uri.getScheme())) || uri.getHost() == null
                || uri.getPort() <= 0 || uri.getPort() > 65_535) {
            throw new IllegalArgumentException(broker + ": is no broker's address; give tcp://host:1883 or "
                    + "ssl://host:8883");
        }
        if (password != null && user == null) {
            throw new IllegalArgumentException("a password without a user; give the user too");
        }
    }

    /** A broker that lets anybody in. */
    public static LinkOptions open(String broker) {
        return new LinkOptions(broker, null, null, null);
    }

    /** Without the password. */
    @Override
    public String toString() {
        return broker + (user == null ? "" : " as " + user);
    }
}

package org.cupbeam.studio.web.access;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;

/** By which a program that collects metrics is let in, to nothing else. */
public final class ScrapeToken {
    /** Lets nobody in. */
    public static final ScrapeToken NONE = new ScrapeToken(null);
    /** The fewest characters: it can be tried as often as somebody likes. */
    public static final int SHORTEST = 20;
    private static final String SCHEME = "Bearer ";

    private final byte[] token;

    private ScrapeToken(byte[] token) {
        this.token = token;
    }

    /** @throws IllegalArgumentException where it is too short */
    public static ScrapeToken of(String token) {
        if (token == null || token.length() < SHORTEST) {
            throw new IllegalArgumentException("it has to be " + SHORTEST + " characters long at least");
        }
        return new ScrapeToken(token.getBytes(StandardCharsets.UTF_8));
    }

    /** @param authorization as the request's header has it (RFC 6750, 2.1); null where it has none */
    public boolean isIn(String authorization) {
        return token != null && authorization != null && authorization.startsWith(SCHEME) && MessageDigest.isEqual(token,
                authorization.substring(SCHEME.length()).getBytes(StandardCharsets.UTF_8));
    }
}

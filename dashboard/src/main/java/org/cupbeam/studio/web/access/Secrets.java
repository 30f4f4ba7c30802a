package org.cupbeam.studio.web.access;

import java.security.SecureRandom;
import java.util.Optional;

/** The secrets of those who sign in by name, as slow hashes. */
public final class Secrets {
    /** The fewest and the most characters. */
    public static final int SHORTEST = 8;
    public static final int LONGEST = 64;

    private final SlowHash slow;
    private final Slowly slowly = new Slowly();
    private final String nobodys;

    Secrets(int rounds) {
        this.slow = new SlowHash(new SecureRandom(), rounds);
        this.nobodys = SlowHash.ofNobody(rounds);
    }

    /** What speaks against one, with what would do. */
    public static Optional<String> objection(String secret) {
        return Guessable.objection("A secret", SHORTEST, LONGEST, secret);
    }

    /** A new hash. @throws IllegalArgumentException for one that is too easily guessed, saying what would do */
    public String hash(String secret) {
        objection(secret).ifPresent(why -> {
            throw new IllegalArgumentException(why);
        });
        return slowly.done(() -> slow.of(Guessable.normal(secret)));
    }

    /** Whether it is the one that was hashed. Takes as long where nobody is of that name: then the hash is null. */
    public boolean is(String secret, String hashOrNull) {
        if (secret.length() > LONGEST || hashOrNull != null && !SlowHash.isHash(hashOrNull)) {
            return false;
        }
        boolean matches = slowly.done(() -> SlowHash.matches(Guessable.normal(secret), hashOrNull == null ? nobodys : hashOrNull));
        return matches && hashOrNull != null;
    }
}

package org.cupbeam.studio.web.access;

import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.crypto.SecretKeyFactory;
import javax.crypto.spec.PBEKeySpec;

/**
 * A hash that takes long on purpose: PBKDF2 (RFC 8018) with HMAC-SHA-256 and a salt of its own each time. As text it is
 * {@code pbkdf2-sha256$rounds$salt$hash}, the last two in base 64.
 */
final class SlowHash {
    /** OWASP's cheat sheet on password storage asks for this many rounds of HMAC-SHA-256. */
    static final int ROUNDS = 600_000;
    private static final int MOST_ROUNDS = 10_000_000;
    private static final int SALT_BYTES = 16;
    private static final int HASH_BITS = 256;
    private static final Pattern TEXT =
            Pattern.compile("pbkdf2-sha256\\$([1-9][0-9]{0,7})\\$([A-Za-z0-9+/=]{8,64})\\$([A-Za-z0-9+/=]{43,44})");

    private final SecureRandom random;
    private final int rounds;

    SlowHash(SecureRandom random, int rounds) {
        this.random = random;
        this.rounds = rounds;
    }

    /** A new hash, as text. */
    String of(String secret) {
        byte[] salt = new byte[SALT_BYTES];
        random.nextBytes(salt);
        Base64.Encoder base64 = Base64.getEncoder();
        return "pbkdf2-sha256$" + rounds + "$" + base64.encodeToString(salt) + "$"
                + base64.encodeToString(hash(secret, salt, rounds));
    }

    /** A hash that no secret has, and that takes as long to try. */
    static String ofNobody(int rounds) {
        Base64.Encoder base64 = Base64.getEncoder();
        return "pbkdf2-sha256$" + rounds + "$" + base64.encodeToString(new byte[SALT_BYTES]) + "$"
                + base64.encodeToString(new byte[HASH_BITS / Byte.SIZE]);
    }

    /** Whether a text is a hash that {@link #matches} can take. */
    static boolean isHash(String text) {
        Matcher parts = TEXT.matcher(text);
        return parts.matches() && Integer.parseInt(parts.group(1)) <= MOST_ROUNDS;
    }

    /** Whether the secret is the one that was hashed; takes the same time either way. */
    static boolean matches(String secret, String text) {
        Matcher parts = TEXT.matcher(text);
        if (!parts.matches()) {
            throw new IllegalArgumentException("not a hash of ours");
        }
        Base64.Decoder base64 = Base64.getDecoder();
        byte[] expected = base64.decode(parts.group(3));
        byte[] given = hash(secret, base64.decode(parts.group(2)), Integer.parseInt(parts.group(1)));
        return MessageDigest.isEqual(expected, given);
    }

    private static byte[] hash(String secret, byte[] salt, int rounds) {
        PBEKeySpec spec = new PBEKeySpec(secret.toCharArray(), salt, rounds, HASH_BITS);
        try {
            return SecretKeyFactory.getInstance("PBKDF2WithHmacSHA256").generateSecret(spec).getEncoded();
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java has PBKDF2 with SHA-256", e);
        } finally {
            spec.clearPassword();
        }
    }
}

package org.cupbeam.studio.web.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;

class SlowHashTest {
    /** RFC 7914, section 11: PBKDF2-HMAC-SHA-256 of "passwd", salt "salt", 1 round; the first 32 of its 64 bytes. */
    private static final String PUBLISHED = "55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc";

    private final SlowHash slow = new SlowHash(new SecureRandom(), 100);

    @Test
    void isThePublishedFunction() {
        String text = "pbkdf2-sha256$1$" + Base64.getEncoder().encodeToString("salt".getBytes()) + "$"
                + Base64.getEncoder().encodeToString(HexFormat.of().parseHex(PUBLISHED));

        assertThat(SlowHash.matches("passwd", text)).isTrue();
        assertThat(SlowHash.matches("passwe", text)).isFalse();
    }

    @Test
    void saltsEachAnew() {
        assertThat(slow.of("739205")).isNotEqualTo(slow.of("739205"));
        assertThat(SlowHash.matches("739205", slow.of("739205"))).isTrue();
    }

    @Test
    void knowsItsOwnTextFromAnyOther() {
        assertThat(SlowHash.isHash(slow.of("739205"))).isTrue();
        assertThat(SlowHash.isHash("")).isFalse();
        assertThat(SlowHash.isHash("739205")).isFalse();
        assertThat(SlowHash.isHash(slow.of("x").replace("$100$", "$99999999$"))).as("would take for ever").isFalse();
    }

    @Test
    void takesAsManyRoundsAsIsAdvised() {
        assertThat(SlowHash.ROUNDS).as("OWASP, password storage").isGreaterThanOrEqualTo(600_000);
    }
}

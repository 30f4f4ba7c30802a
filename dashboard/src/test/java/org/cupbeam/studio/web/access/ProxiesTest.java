package org.cupbeam.studio.web.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ProxiesTest {
    @Test
    void areKnownHoweverTheirAddressIsWritten() {
        Proxies proxies = Proxies.at(List.of("127.0.0.1", "fd00::7"));

        assertThat(proxies.include("127.0.0.1")).isTrue();
        assertThat(proxies.include("fd00:0:0:0:0:0:0:7")).isTrue();
        assertThat(proxies.include("127.0.0.2")).isFalse();
        assertThat(Proxies.NONE.include("127.0.0.1")).isFalse();
    }

    @ParameterizedTest
    @ValueSource(strings = {"localhost", "proxy.example", "", "127.0.0.1:8080", "10.0.0.0/8", "127.0.0.999", "cafe"})
    void aNameIsNoAddress(String text) {
        assertThatThrownBy(() -> Proxies.at(List.of(text))).isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("is no address of a proxy");
    }

    @ParameterizedTest
    @CsvSource({"'10.0.0.9', 10.0.0.9", "'10.0.0.1, 10.0.0.9', 10.0.0.9", "'forged,  10.0.0.9 ', 10.0.0.9",
        "'2001:db8::1', 2001:db8:0:0:0:0:0:1", "'10.0.0.9, forged.example', ", "'', ", "'unknown', ", "'10.0.0.9,', "})
    void theLastThatIsNamedIsTheCaller(String forwarded, String caller) {
        assertThat(Proxies.caller(forwarded).orElse(null)).isEqualTo(caller);
    }
}

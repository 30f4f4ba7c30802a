package org.cupbeam.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LinkOptionsTest {
    @ParameterizedTest
    @ValueSource(strings = {"", "studio", "studio:1883", "http://studio:1883", "tcp://studio", "tcp://:1883",
            "tcp://studio:99999", "tcp://a b:1883"})
    void anAddressThatNoBrokerHasIsRefusedWithWhatWouldDo(String broker) {
        assertThatThrownBy(() -> LinkOptions.open(broker)).isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith(broker + ": is no ").hasMessageContaining("tcp://host:1883");
    }

    @Test
    void thePasswordIsNeverShown() {
        assertThat(new LinkOptions("ssl://studio:8883", "lane", "secret", null)).hasToString("ssl://studio:8883 as lane");
    }
}

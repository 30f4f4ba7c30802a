package org.cupbeam.studio.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class NameWordsTest {
    private final NameWords words = new NameWords(List.of("ada", "ada lund", "zo\u00eb $1"));

    @Test
    void findsWholeNamesWhateverTheirCaseAndSpacing() {
        assertThat(words.replaced("ADA   Lund's ball hit ada.", "X$1")).isEqualTo("X$1's ball hit X$1.");
        assertThat(words.replaced("Zoe\u0308 $1 and Adam", "X")).as("letters put together, and no part of Adam").isEqualTo("X and Adam");
        assertThat(words.in("{\"by\": \"\\u0041da\"}")).as("escaped as JSON may").isTrue();
        assertThat(words.in("\u212bda, nada")).isFalse();
        assertThat(words.in(null)).isFalse();
        assertThat(words.replaced("nobody \\u0024 here", "X")).isEqualTo("nobody \\u0024 here");
        assertThat(words.replaced("\\u0022 $ \\ Ada", "X")).isEqualTo("\\u0022 $ \\ X");
    }
}

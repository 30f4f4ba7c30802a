package org.cupbeam.studio.insight.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WordsTest {
    @ParameterizedTest
    @CsvSource({"2743.2,2.7 m,9 ft", "914.4,91 cm,3 ft", "200,20 cm,8 in", "-267,27 cm,11 in", "2900,2.9 m,9 ft 6 in",
            "3000,3.0 m,9 ft 10 in", "3700,3.7 m,12 ft", "996,1.0 m,3 ft 3 in"})
    void lengthsAreToldAsPeopleDo(double mm, String metric, String feet) {
        assertThat(Units.METRIC.length(mm)).isEqualTo(metric);
        assertThat(Units.FEET.length(mm)).isEqualTo(feet);
    }

    @Test
    void sharesAreCountedInHundreds() {
        assertThat(Words.inHundred(0.416)).isEqualTo("42 in 100");
        assertThat(Words.ofHundred(0.416, "runs")).isEqualTo("42 of 100 runs");
        assertThat(Words.ofHundred(0.999, "runs")).isEqualTo("more than 99 of 100 runs");
        assertThat(Words.inHundred(0.001)).isEqualTo("fewer than 1 in 100");
        assertThat(Words.inHundred(0.999)).isEqualTo("more than 99 in 100");
        assertThat(Words.inHundred(0.416, 0.35, 0.49)).isEqualTo("42 in 100 (35 to 49)");
    }

    @Test
    void listsReadAsSentences() {
        assertThat(Words.list(List.of())).isEmpty();
        assertThat(Words.list(List.of("direction"))).isEqualTo("direction");
        assertThat(Words.list(List.of("a", "b", "c"))).isEqualTo("a, b and c");
        assertThat(Words.count(1, "ball")).isEqualTo("1 ball");
        assertThat(Words.count(3, "ball")).isEqualTo("3 balls");
    }
}

package org.cupbeam.studio.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What the troubleshooting table says that the product says, the product does say: each quotation is in its source. */
class QuotedWordsTest {
    /** At most so much source stands between what comes before a name or number in a message and what comes after it. */
    private static final String BETWEEN = "[\\s\\S]{0,120}?";
    private static String product;

    static List<String> quotations() {
        return Pattern.compile("\"([^\"\n]+)\"").matcher(Doc.named("docs/troubleshooting.md").text()).results()
                .map(MatchResult::group).map(each -> each.substring(1, each.length() - 1)).toList();
    }

    @BeforeAll
    static void read() {
        product = Sources.product();
    }

    @ParameterizedTest
    @MethodSource("quotations")
    void areTheProductsOwn(String words) {
        assertThat(isSaid(words)).as("somewhere in the sources: %s", words).isTrue();
    }

    @Test
    void otherWordsAreNotFound() {
        assertThat(quotations()).hasSizeGreaterThan(30);
        assertThat(isSaid("port … is engaged")).isFalse();
        assertThat(isSaid("folder … is in use by another lane")).isFalse();
    }

    private static boolean isSaid(String words) {
        return Pattern.compile(Arrays.stream(words.split("…")).filter(part -> !part.isBlank()).map(Pattern::quote)
                .collect(Collectors.joining(BETWEEN))).matcher(product).find();
    }
}

package org.cupbeam.link;

import static org.assertj.core.api.Assertions.assertThat;

import org.cupbeam.fuzz.Fuzz;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(value = 3_600, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class IncomingFuzzTest {
    @Test
    void whateverComesByAnyTopicIsTakenOrAnsweredWithAReason() {
        assertThat(Fuzz.of(new IncomingTarget(), 2_000)).as("kinds of outcome").isGreaterThan(10);
    }
}

package org.cupbeam.studio.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.cupbeam.fuzz.Fuzz;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(value = 3_600, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class HttpFuzzTest {
    @Test
    void anyRequestIsAnsweredAndNoneBreaksAnything() throws Exception {
        try (HttpTarget target = new HttpTarget()) {
            assertThat(Fuzz.of(target, 200)).as("kinds of outcome").isGreaterThan(20);
        }
    }
}

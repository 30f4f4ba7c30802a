package org.cupbeam.lane;

import static org.assertj.core.api.Assertions.assertThat;

import org.cupbeam.fuzz.Fuzz;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(value = 3_600, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class LaneFuzzTest {
    @Test
    void eachCommandThatCanBeReadIsAnsweredAndThePlaySurvivesAPowerCut() throws Exception {
        assertThat(Fuzz.of(new CommandTarget(), 500)).as("kinds of outcome").isGreaterThan(20);
    }
}

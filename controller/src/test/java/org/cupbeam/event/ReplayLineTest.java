package org.cupbeam.event;

import static org.assertj.core.api.Assertions.assertThat;

import org.cupbeam.drill.EndedBy;
import org.junit.jupiter.api.Test;

class ReplayLineTest {
    @Test
    void anAttemptHasTheAgreedKeysInTheAgreedOrder() {
        assertThat(ReplayLine.attempt(5_027_912_345L, Samples.MISSED, null)).isEqualTo("""
                {"t_s": 5.0279, "outcome": "missed", "finish_mm": 1597.8, "finish_sd_mm": 9.1, \
                "finish_between_mm": [1580, 1615.6], "overshoot": true, "speed_at_hole_mm_s": 1400.1, \
                "pace_mm": 1597.8, "rim": true, "how": "sensed"}""");
    }

    @Test
    void whatIsNotKnownIsNull() {
        assertThat(ReplayLine.attempt(0, Samples.SHORT, null)).isEqualTo("""
                {"t_s": 0, "outcome": "missed", "finish_mm": null, "finish_sd_mm": null, \
                "finish_between_mm": [null, -450], "overshoot": false, "speed_at_hole_mm_s": null, \
                "pace_mm": null, "rim": false, "how": "entered"}""");
    }

    @Test
    void aDrillAddsItsKeysAfterTheAttempts() {
        assertThat(ReplayLine.attempt(100_000, Samples.HOLED, new ReplayLine.Turn("A \"x\"", 2, 3, 4)))
                .startsWith("{\"t_s\": 0.0001, ")
                .endsWith(", \"how\": \"sensed\", \"player\": \"A \\\"x\\\"\", \"station\": 2, \"ball\": 3, "
                        + "\"balls_left\": 4}");
    }

    @Test
    void runsAndDuelsEndWithALineOfTheirOwn() {
        assertThat(ReplayLine.runEnded("A", 3, 12, 5, EndedBy.CLEARED_ALL)).isEqualTo(
                "{\"run_ended\": true, \"player\": \"A\", \"stations_cleared\": 3, \"attempts\": 12, \"holed\": 5, "
                        + "\"ended_by\": \"cleared-all\"}");
        assertThat(ReplayLine.duelEnded("B")).isEqualTo("{\"duel_ended\": true, \"winner\": \"B\"}");
        assertThat(ReplayLine.duelEnded(null)).isEqualTo("{\"duel_ended\": true, \"winner\": null}");
    }
}

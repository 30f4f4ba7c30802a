package org.cupbeam.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * Whatever comes in by a file or a message is taken, or refused with a reason that says where and what: nothing escapes,
 * nothing hangs, and the memory that it takes is bounded.
 */
@Timeout(value = 3_600, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class ReadersFuzzTest {
    @Test
    void aRigFile() {
        assertThat(Fuzz.of(new RigTarget(), 600)).as("kinds of outcome").isGreaterThan(30);
    }

    @Test
    void aDrillFile() {
        assertThat(Fuzz.of(new DrillTarget(), 400)).as("kinds of outcome").isGreaterThan(30);
    }

    @Test
    void aTrace() {
        assertThat(Fuzz.of(new TraceTarget(), 1_500)).as("kinds of outcome").isGreaterThan(20);
    }

    @Test
    void aMessageOfAnyKind() {
        assertThat(Fuzz.of(new MessageTarget(), 1_500)).as("kinds of outcome").isGreaterThan(40);
    }
}

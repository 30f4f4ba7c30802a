package org.cupbeam.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.cupbeam.fuzz.Fuzz;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(value = 3_600, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class CommandsFuzzTest {
    @Test
    void anyCommandLineIsObeyedOrRefusedInWords() throws Exception {
        assertThat(Fuzz.of(new OptionsTarget(), 60)).as("kinds of outcome").isGreaterThan(15);
    }

    @Test
    void aFileThatIsNoJournalIsSaidToBeNone() throws Exception {
        assertThat(Fuzz.of(new JournalFileTarget(), 3)).as("kinds of outcome").isGreaterThan(2);
    }
}

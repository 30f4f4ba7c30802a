package org.cupbeam.studio.store;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class CheckSumTest {
    /** RFC 3720, B.4: 32 bytes of zeroes give aa 36 91 8a, the lowest byte first; of 00 to 1f, 4e 79 dd 46. */
    @Test
    void isThatOfTheStandard() {
        StringBuilder counting = new StringBuilder();
        for (char each = 0; each < 32; each++) {
            counting.append(each);
        }
        assertThat(CheckSum.of("\0".repeat(32))).isEqualTo("8a9136aa");
        assertThat(CheckSum.of(counting.toString())).isEqualTo("46dd794e");
    }
}

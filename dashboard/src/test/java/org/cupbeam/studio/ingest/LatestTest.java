package org.cupbeam.studio.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;

class LatestTest {
    private final Latest<Integer> box = new Latest<>(2);

    @Test
    void keepsTheLatestLetterOfASubjectInItsPlace() throws Exception {
        box.put("a", 1);
        box.put("b", 2);
        box.put("a", 3);

        assertThat(box.take(1)).isEqualTo(Map.entry("a", 3));
        assertThat(box.take(1)).isEqualTo(Map.entry("b", 2));
        assertThat(box.take(1)).isNull();
    }

    @Test
    void refusesMoreSubjectsThanItHasRoomFor() {
        box.put("a", 1);
        box.put("b", 2);

        assertThat(box.put("c", 3)).isFalse();
        assertThat(box.put("b", 4)).isTrue();
    }

    @Test
    void givesALetterBackOnlyWhereNoLaterOneHasCome() throws Exception {
        box.put("a", 1);
        Map.Entry<String, Integer> taken = box.take(1);
        box.put("a", 2);
        box.putBack(taken.getKey(), taken.getValue());

        assertThat(box.take(1)).isEqualTo(Map.entry("a", 2));
    }

    @Test
    void holdsOnlySoManyBytes() throws InterruptedException {
        Latest<String> box = new Latest<>(100, 10, String::length);
        assertThat(box.put("a", "12345")).isTrue();
        assertThat(box.put("b", "123456")).isFalse();
        assertThat(box.put("a", "1234567890")).as("in place of the other").isTrue();
        box.take(0);
        assertThat(box.put("b", "123456")).isTrue();
    }
}

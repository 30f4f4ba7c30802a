package org.cupbeam.event;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ComplaintsTest {
    private long nowNs;
    private final List<String> said = new ArrayList<>();
    private final Complaints complaints = new Complaints(() -> nowNs, said::add);

    @Test
    void tellsAFewOfManyAndHowManyMoreThereWere() {
        for (int i = 0; i < 1_000; i++) {
            complaints.about("a", "wrong " + i);
        }
        assertThat(said).hasSize(Complaints.MOST_OF_ONE).first().isEqualTo("a: wrong 0");

        nowNs += 60_000_000_000L;
        complaints.about("a", "wrong again");
        assertThat(said).hasSize(Complaints.MOST_OF_ONE + 2).contains("a: wrong again")
                .anyMatch(each -> each.startsWith("995 more messages made no sense"));
    }

    @Test
    void oneThatIsLoudHidesNoOther() {
        for (int i = 0; i < 1_000; i++) {
            complaints.about("loud", "x");
        }
        assertThat(complaints.about("quiet", "x")).isTrue();
    }

    @Test
    void manyTopicsTogetherSayNoMoreThanThis() {
        for (int i = 0; i < 10_000; i++) {
            complaints.about("topic-" + i, "x".repeat(10_000));
        }
        assertThat(said).hasSize(Complaints.MOST_OF_ALL).allMatch(each -> each.length() < 400);
    }
}

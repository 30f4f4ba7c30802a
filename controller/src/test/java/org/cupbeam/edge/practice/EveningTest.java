package org.cupbeam.edge.practice;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class EveningTest {
    private record Edge(int channel, boolean active, long timeNs) {
    }

    @Test
    void theSameSeedGivesTheSameEvening() {
        Evening one = evening(7, PracticeRigs.FULL);
        Evening other = evening(7, PracticeRigs.FULL);

        assertThat(edges(one)).isEqualTo(edges(other));
        assertThat(one.truths()).isEqualTo(other.truths());
        assertThat(edges(one)).isNotEqualTo(edges(evening(8, PracticeRigs.FULL)));
    }

    @ParameterizedTest
    @EnumSource(PracticeRigs.class)
    void edgesComeInOrderOfTimeAndEachChannelAlternates(PracticeRigs rig) {
        boolean[] active = new boolean[rig.level().channels().size()];
        long lastNs = 0;
        for (Edge edge : edges(evening(3, rig))) {
            assertThat(edge.timeNs()).isGreaterThanOrEqualTo(lastNs);
            assertThat(edge.active()).isNotEqualTo(active[edge.channel()]);
            active[edge.channel()] = edge.active();
            lastNs = edge.timeNs();
        }
        assertThat(active).doesNotContain(true);
    }

    @Test
    void aPuttIsVisibleWhereASensorSawIt() {
        for (Truth truth : evening(5, PracticeRigs.GATE).truths()) {
            assertThat(truth.visible()).isEqualTo(truth.holed() || truth.finishMm() > 914.4 - 21.335);
        }
        assertThat(evening(5, PracticeRigs.FULL).truths()).allMatch(Truth::visible);
    }

    @Test
    void somePuttsDropSomeStopShortAndSomeRunPast() {
        List<Truth> truths = evening(11, PracticeRigs.STANDARD).truths();

        assertThat(truths).filteredOn(Truth::holed).hasSizeBetween(60, 120);
        assertThat(truths).filteredOn(t -> t.finishMm() < 0).hasSizeBetween(15, 70);
        assertThat(truths).filteredOn(Truth::overshoot).hasSizeBetween(5, 60);
        assertThat(truths).filteredOn(Truth::rim).hasSizeBetween(3, 40);
    }

    private static Evening evening(long seed, PracticeRigs rig) {
        return Evening.simulate(seed, PracticeLane.clean(rig.level()), 200);
    }

    private static List<Edge> edges(Evening evening) {
        List<Edge> edges = new ArrayList<>();
        evening.play((channel, active, timeNs) -> edges.add(new Edge(channel, active, timeNs)));
        return edges;
    }
}

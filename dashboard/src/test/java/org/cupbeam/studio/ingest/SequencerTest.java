package org.cupbeam.studio.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class SequencerTest {
    private static final long PATIENCE_NS = 100;
    private static final int KNOCKS = 2;

    private final Sequencer<Long> sequencer = new Sequencer<>(0, 4, early());

    @Example
    void givesOutAtOnceWhatComesInOrder() {
        assertThat(offer(1)).containsExactly(1L);
        assertThat(offer(2)).containsExactly(2L);
        assertThat(sequencer.last()).isEqualTo(2);
    }

    @Example
    void goesOnBehindWhatSomebodyElseKept() {
        offer(1);
        offer(5);
        assertThat(sequencer.keptUpTo(3)).isEmpty();
        assertThat(sequencer.keptUpTo(2)).as("known already").isEmpty();
        assertThat(offer(4)).containsExactly(4L, 5L);
        offer(8);
        assertThat(sequencer.keptUpTo(7)).containsExactly(8L);
        offer(10);
        assertThat(sequencer.keptUpTo(12)).as("nothing of it is still to be kept").isEmpty();
        assertThat(offer(13)).containsExactly(13L);
    }

    @Example
    void passesOverWhatComesAgain() {
        offer(1);
        assertThat(offer(1)).isEmpty();
        assertThat(sequencer.last()).isEqualTo(1);
    }

    @Example
    void holdsWhatComesEarlyUntilTheGapIsFilled() {
        offer(1);
        assertThat(offer(3)).isEmpty();
        assertThat(offer(4)).isEmpty();
        assertThat(sequencer.last()).isEqualTo(1);
        assertThat(offer(2)).containsExactly(2L, 3L, 4L);
    }

    @Example
    void beginsAfterWhatIsKeptAlready() {
        Sequencer<Long> later = new Sequencer<>(41, 4, early());
        assertThat(later.offer(41, 41L, 0)).isEmpty();
        assertThat(later.offer(42, 42L, 0)).containsExactly(42L);
    }

    @Example
    void holdsOnlySoMuchAndTheNearest() {
        for (long early : new long[] {9, 8, 7, 6, 5, 4, 3}) {
            offer(early);
        }
        assertThat(sequencer.held()).isEqualTo(4);
        offer(1);
        assertThat(offer(2)).containsExactly(2L, 3L, 4L, 5L, 6L);
        assertThat(sequencer.last()).isEqualTo(6);
    }

    @Example
    void waitsForAGapAsLongAsItsLaneMayStillFillIt() {
        sequencer.offer(3, 3L, 0);
        sequencer.offer(3, 3L, 10);
        sequencer.offer(3, 3L, 20);
        assertThat(sequencer.overdue(PATIENCE_NS - 1, PATIENCE_NS, KNOCKS)).isEmpty();
        sequencer.offer(2, 2L, 99);
        assertThat(sequencer.overdue(10 * PATIENCE_NS, PATIENCE_NS, KNOCKS)).as("2 has not come again yet").isEmpty();
    }

    @Example
    void givesAGapUpThatTheLaneSkipsAgainAndAgain() {
        sequencer.offer(3, 3L, 0);
        sequencer.offer(4, 4L, 0);
        sequencer.offer(3, 3L, 10);
        sequencer.offer(3, 3L, 20);
        assertThat(sequencer.overdue(PATIENCE_NS, PATIENCE_NS, KNOCKS)).contains(new Sequencer.Missing(1, 2));
        assertThat(sequencer.skip()).containsExactly(3L, 4L);
        assertThat(offer(5)).containsExactly(5L);
        assertThat(sequencer.overdue(10 * PATIENCE_NS, PATIENCE_NS, KNOCKS)).isEmpty();
    }

    @Property
    void givesOutEachNumberOnceAndInOrderHoweverTheyCome(@ForAll("deliveries") List<Long> deliveries) {
        Sequencer<Long> any = new Sequencer<>(0, 8, early());
        List<Long> out = new ArrayList<>();
        for (long each : deliveries) {
            out.addAll(any.offer(each, each, 0));
        }
        // The lane sends everything again from where the host stands, as often as that takes.
        for (long each = any.last() + 1; each <= 30; each++) {
            out.addAll(any.offer(each, each, 0));
        }
        assertThat(out).containsExactlyElementsOf(LongStream.rangeClosed(1, 30).boxed().toList());
    }

    @Provide
    Arbitrary<List<Long>> deliveries() {
        return Arbitraries.longs().between(1, 30).list().ofMaxSize(120);
    }

    @Property
    void knowsHowLargeIsWhatItHolds(@ForAll("deliveries") List<Long> deliveries) {
        long[] told = {0};
        Sequencer<Long> any = new Sequencer<>(0, 8, new Early<>(item -> item, change -> told[0] += change));
        for (long each : deliveries) {
            any.offer(each, each, 0);
            assertThat(any.heldBytes()).isEqualTo(told[0]);
            assertThat(any.heldBytes() == 0).isEqualTo(any.held() == 0);
        }
        long before = any.heldBytes();
        if (any.held() > 0) {
            assertThat(any.skip().stream().mapToLong(item -> item).sum()).isEqualTo(before - any.heldBytes());
        }
        any.keptUpTo(30);
        assertThat(told[0]).isZero();
        assertThat(any.heldBytes()).isZero();
    }

    private static Early<Long> early() {
        return new Early<>(item -> 1, change -> { });
    }

    private List<Long> offer(long sequence) {
        return sequencer.offer(sequence, sequence, 0);
    }
}

package org.cupbeam.edge.board;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.cupbeam.edge.EdgeSink;
import org.junit.jupiter.api.Test;

/** Times are ms after the lines were opened. */
class EdgeMergerTest {
    private static final long MS = 1_000_000;

    private final ThreeLines lines = new ThreeLines();
    private final List<String> handedOn = new ArrayList<>();
    private final EdgeMerger merger = new EdgeMerger(lines.readers, new EdgeSink() {
        @Override
        public void edge(int channel, boolean active, long timeNs) {
            handedOn.add(channel + (active ? " on " : " off ") + (timeNs - lines.startNs) / 1000);
        }

        @Override
        public void settled(long timeNs) {
            handedOn.add("settled " + (timeNs - lines.startNs) / 1000);
        }
    });

    @Test
    void anEdgeGoesOnceTheKernelWouldHaveQueuedAnEarlierOneOfAnotherLine() {
        stamped(0, true, 7);
        read(0, 8);
        assertThat(turn(8)).isEqualTo(MS);
        assertThat(handedOn).isEmpty();
        assertThat(turn(9)).isZero();
        assertThat(handedOn).containsExactly("0 on 7000");
    }

    @Test
    void anEdgeWaitsForAnEarlierOneWhoseReaderIsHeldUp() {
        stamped(1, true, 6);
        stamped(0, true, 7);
        read(0, 8);
        assertThat(turn(40)).isEqualTo(EdgeMerger.ASK_AGAIN_NS);
        assertThat(handedOn).isEmpty();
        read(1, 60);
        turnUntilIdle(60);
        assertThat(handedOn).startsWith("1 on 6000", "0 on 7000");
        assertThat(lines.late(1)).isZero();
    }

    @Test
    void anEdgeWaitsForOneThatItsReaderHasTakenAndNotPassedOnYet() {
        stamped(0, true, 7);
        read(0, 8);
        stamped(1, true, 6);
        lines.wires.get(1).whileEdgeIsRead = () -> {
            assertThat(turn(40)).isEqualTo(EdgeMerger.ASK_AGAIN_NS);
            assertThat(handedOn).isEmpty();
        };
        read(1, 40);
        turnUntilIdle(41);
        assertThat(handedOn).startsWith("1 on 6000", "0 on 7000");
    }

    @Test
    void anEdgeGoesAtOnceWhenNoOtherLineCanHaveAnEarlierOne() {
        lines.readers.get(1).counters().settled(lines.startNs + 7 * MS);
        lines.readers.get(2).counters().settled(lines.startNs + 9 * MS);
        stamped(0, true, 7);
        read(0, 7);
        assertThat(turn(7)).isZero();
        assertThat(handedOn).containsExactly("0 on 7000");
    }

    @Test
    void aReaderIsWaitedForForHalfASecondAndWhatItBringsLaterTakesTheTimeOfTheLastAndIsCounted() {
        stamped(1, true, 6);
        stamped(0, true, 7);
        read(0, 8);
        assertThat(turn(500)).isPositive();
        assertThat(turn(501)).isZero();
        read(1, 520);
        turnUntilIdle(523);
        assertThat(handedOn).startsWith("0 on 7000", "1 on 7000");
        assertThat(lines.late(1)).isEqualTo(1);
        assertThat(lines.late(0)).isZero();
    }

    @Test
    void aReaderThatHangsHoldsUpNoEdgeFromThenOn() {
        stamped(1, true, 6);
        stamped(0, true, 600);
        read(0, 601);
        assertThat(turn(602)).isZero();
        assertThat(handedOn).containsExactly("0 on 600000");
    }

    @Test
    void anEdgeWaitsForHalfASecondAtMostThoughAllReadersComeRound() {
        stamped(0, true, 7);
        read(0, 8);
        for (int at = 10; at < 508; at += 10) {
            stamped(1, at % 20 == 10, at); // one edge is taken, and the next is there: a line that is never quiet
            lines.readers.get(1).counters().alive(lines.startNs + at * MS);
            assertThat(turn(at)).isPositive();
        }
        assertThat(turn(508)).isZero();
        assertThat(handedOn).containsExactly("0 on 7000");
    }

    @Test
    void aLineThatCannotBeReadHoldsUpNothing() {
        lines.wires.get(1).fail(new IllegalStateException("unplugged"));
        read(1, 1);
        stamped(0, true, 7);
        read(0, 8);
        assertThat(turn(9)).isZero();
        assertThat(handedOn).containsExactly("0 on 7000");
    }

    @Test
    void aLineThatFailsWhenItIsAskedIsWaitedFor() {
        stamped(0, true, 7);
        read(0, 8);
        lines.wires.get(1).fail(new IllegalStateException("unplugged"));
        assertThat(turn(9)).isEqualTo(EdgeMerger.ASK_AGAIN_NS);
        read(1, 10);
        assertThat(turn(10)).isZero();
        assertThat(handedOn).containsExactly("0 on 7000");
    }

    @Test
    void timesAreCutToMicroseconds() {
        lines.stamped(0, true, 7_000_999);
        read(0, 8);
        List<Long> timesNs = new ArrayList<>();
        EdgeMerger exact = new EdgeMerger(lines.readers, (channel, active, timeNs) -> timesNs.add(timeNs - lines.startNs));
        exact.turn(lines.startNs + 10 * MS);
        assertThat(timesNs).containsExactly(7_000_000L);
    }

    @Test
    void timeSettlesAsFarAsTheKernelWouldHaveQueuedWhatIsEarlier() {
        assertThat(turn(50)).isEqualTo(EdgeMerger.IDLE_NS);
        turn(51);
        assertThat(handedOn).containsExactly("settled 48000", "settled 49000");
        assertThat(merger.settledNs()).isEqualTo(lines.startNs + 49 * MS);
    }

    @Test
    void timeDoesNotSettleBeyondAnEdgeWhoseReaderIsHeldUp() {
        turn(40);
        stamped(1, true, 45);
        turn(60);
        assertThat(handedOn).containsExactly("settled 38000");
        read(1, 80);
        turnUntilIdle(80);
        assertThat(handedOn).containsExactly("settled 38000", "1 on 45000", "settled 78000");
    }

    @Test
    void aReaderThatDoesNotComeRoundHoldsUpTimeForHalfASecondOnly() {
        stamped(2, true, 5);
        turn(500);
        assertThat(handedOn).containsExactly("settled 0");
        turn(501);
        assertThat(handedOn).containsExactly("settled 0", "settled 499000");
    }

    @Test
    void whatIsLeftAtTheEndGoesInOrder() {
        stamped(0, true, 7);
        stamped(2, true, 5);
        read(0, 8);
        read(2, 8);
        merger.drain();
        assertThat(handedOn).containsExactly("2 on 5000", "0 on 7000");
    }

    @Test
    void aSinkThatFailsMissesOnlyWhatItFailedAt() {
        List<Long> taken = new ArrayList<>();
        EdgeMerger failing = new EdgeMerger(lines.readers, (channel, active, timeNs) -> {
            if (timeNs == lines.startNs + 7 * MS) {
                throw new IllegalStateException("full");
            }
            taken.add((timeNs - lines.startNs) / MS);
        });
        for (int at = 6; at <= 8; at++) {
            stamped(0, at % 2 == 0, at);
            read(0, at);
            failing.turn(lines.startNs + at * MS + EdgeMerger.QUEUED_WITHIN_NS);
        }
        assertThat(taken).containsExactly(6L, 8L);
    }

    /** However long the kernel takes to queue them, up to its 2 ms, and a reader to take them, up to half a second. */
    @Property(tries = 500)
    void edgesOfAllLinesComeInTheOrderOfTheirTimeAndKeepIt(@ForAll("edges") List<Stamped> edges) {
        ThreeLines three = new ThreeLines();
        List<Long> handedOnNs = new ArrayList<>();
        EdgeMerger order = new EdgeMerger(three.readers, (channel, active, timeNs) -> handedOnNs.add(timeNs - three.startNs));
        List<Stamped> inOrder = edges.stream().sorted(Comparator.comparingLong(Stamped::timeNs)).toList();
        for (Deed each : deeds(inOrder, three)) {
            for (long nowNs = each.atNs() - 3 * MS; nowNs < each.atNs(); nowNs += 250_000) {
                order.turn(three.startNs + nowNs);
            }
            each.does().run();
        }
        order.drain();
        assertThat(handedOnNs).isEqualTo(inOrder.stream().map(Stamped::timeNs).toList());
        assertThat(three.late(0) + three.late(1) + three.late(2)).isZero();
    }

    /** What kernel and readers do, in the order of its time; a line's own edges are queued and read one after the other. */
    private static List<Deed> deeds(List<Stamped> inOrder, ThreeLines three) {
        List<Deed> deeds = new ArrayList<>();
        long[] queuedNs = new long[three.readers.size()];
        long[] readNs = new long[three.readers.size()];
        boolean[] level = new boolean[three.readers.size()];
        for (Stamped each : inOrder) {
            int line = each.line();
            boolean to = !level[line];
            level[line] = to;
            queuedNs[line] = Math.max(queuedNs[line], each.timeNs() + each.queuedAfterNs());
            readNs[line] = Math.max(Math.max(readNs[line], queuedNs[line]), each.timeNs() + each.readAfterNs());
            long readAtNs = readNs[line];
            deeds.add(new Deed(queuedNs[line], () -> three.stamped(line, to, each.timeNs())));
            deeds.add(new Deed(readAtNs, () -> three.read(line, readAtNs)));
        }
        deeds.sort(Comparator.comparingLong(Deed::atNs));
        return deeds;
    }

    record Stamped(int line, long timeNs, long queuedAfterNs, long readAfterNs) {
    }

    private record Deed(long atNs, Runnable does) {
    }

    @Provide
    Arbitrary<List<Stamped>> edges() {
        return Combinators.combine(Arbitraries.integers().between(0, 2),
                Arbitraries.longs().between(1, 400_000).map(each -> each * 1000),
                Arbitraries.longs().between(0, EdgeMerger.QUEUED_WITHIN_NS - 1),
                Arbitraries.oneOf(Arbitraries.longs().between(0, 3 * MS), Arbitraries.longs().between(0, 90 * MS)))
                .as(Stamped::new).list().ofMaxSize(16);
    }

    private void stamped(int line, boolean high, long atMs) {
        lines.stamped(line, high, atMs * MS);
    }

    private void read(int line, long atMs) {
        lines.read(line, atMs * MS);
    }

    private long turn(long atMs) {
        return merger.turn(lines.startNs + atMs * MS);
    }

    private void turnUntilIdle(long atMs) {
        while (turn(atMs) == 0) {
            assertThat(handedOn).hasSizeLessThan(100);
        }
    }
}

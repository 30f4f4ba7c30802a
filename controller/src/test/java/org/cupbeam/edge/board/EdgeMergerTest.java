package org.cupbeam.edge.board;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.rig.Channel;
import org.junit.jupiter.api.Test;

class EdgeMergerTest {
    private static final long MS = 1_000_000;

    private final List<LineReader> lines = threeLines();
    private final List<String> handedOn = new ArrayList<>();
    private final EdgeMerger merger = new EdgeMerger(lines, new EdgeSink() {
        @Override
        public void edge(int channel, boolean active, long timeNs) {
            handedOn.add(channel + (active ? " on " : " off ") + timeNs);
        }

        @Override
        public void settled(long timeNs) {
            handedOn.add("settled " + timeNs);
        }
    }, 2 * MS);

    @Test
    void anEdgeWaitsForEarlierOnesOfOtherLines() {
        arrives(0, true, 7 * MS, 8 * MS);
        assertThat(merger.turn(8 * MS)).isEqualTo(2 * MS);
        assertThat(handedOn).isEmpty();
        arrives(1, true, 6 * MS, 9 * MS);
        turnUntilIdle(10 * MS);
        assertThat(handedOn).containsExactly("1 on 6000000", "0 on 7000000");
    }

    @Test
    void anEdgeWaitsNoLongerThanTheWindow() {
        arrives(0, true, 7 * MS, 8 * MS);
        assertThat(merger.turn(9_999_999)).isEqualTo(1);
        assertThat(merger.turn(10 * MS)).isZero();
        assertThat(handedOn).containsExactly("0 on 7000000");
    }

    @Test
    void anEdgeGoesAtOnceWhenNoOtherLineCanHaveAnEarlierOne() {
        lines.get(1).counters().settled(7 * MS);
        lines.get(2).counters().settled(9 * MS);
        arrives(0, true, 7 * MS, 8 * MS);
        assertThat(merger.turn(8 * MS)).isZero();
        assertThat(handedOn).containsExactly("0 on 7000000");
    }

    @Test
    void anEdgeThatComesTooLateTakesTheTimeOfTheLastAndIsCounted() {
        arrives(0, true, 7 * MS, 8 * MS);
        merger.turn(10 * MS);
        arrives(1, true, 6 * MS, 11 * MS);
        merger.turn(13 * MS);
        assertThat(handedOn).containsExactly("0 on 7000000", "1 on 7000000");
        assertThat(lines.get(1).counters().health("").late()).isEqualTo(1);
        assertThat(lines.get(0).counters().health("").late()).isZero();
    }

    @Test
    void timesAreCutToMicroseconds() {
        arrives(0, true, 7_000_999, 8 * MS);
        merger.turn(10 * MS);
        assertThat(handedOn).containsExactly("0 on 7000000");
    }

    @Test
    void timeSettlesWithTheSlowestLine() {
        lines.forEach(line -> line.counters().settled(40 * MS));
        lines.get(1).counters().settled(45 * MS);
        assertThat(merger.turn(50 * MS)).isEqualTo(EdgeMerger.IDLE_NS);
        merger.turn(51 * MS);
        assertThat(handedOn).containsExactly("settled 40000000");
    }

    @Test
    void aLineThatIsSilentHoldsUpTimeForHalfASecondOnly() {
        lines.get(0).counters().settled(900 * MS);
        lines.get(1).counters().settled(900 * MS);
        merger.turn(901 * MS);
        assertThat(handedOn).containsExactly("settled 401000000");
    }

    @Test
    void timeDoesNotSettleBeyondAnEdgeThatWaits() {
        lines.forEach(line -> line.counters().settled(5 * MS));
        arrives(0, true, 7 * MS, 8 * MS);
        merger.turn(8 * MS);
        assertThat(handedOn).isEmpty();
    }

    @Test
    void whatIsLeftAtTheEndGoesInOrder() {
        arrives(0, true, 7 * MS, 8 * MS);
        arrives(2, true, 5 * MS, 8 * MS);
        merger.drain();
        assertThat(handedOn).containsExactly("2 on 5000000", "0 on 7000000");
    }

    @Test
    void aSinkThatFailsMissesOnlyWhatItFailedAt() {
        List<Long> taken = new ArrayList<>();
        EdgeMerger failing = new EdgeMerger(lines, (channel, active, timeNs) -> {
            if (timeNs == 7 * MS) {
                throw new IllegalStateException("full");
            }
            taken.add(timeNs);
        }, 0);
        for (long timeNs = 6 * MS; timeNs <= 8 * MS; timeNs += MS) {
            arrives(0, true, timeNs, timeNs);
            failing.turn(timeNs);
        }
        assertThat(taken).containsExactly(6 * MS, 8 * MS);
    }

    /** However reading them lags, as long as it is less than the window. */
    @Property(tries = 500)
    void edgesOfAllLinesComeInTheOrderOfTheirTime(@ForAll("arrivals") List<Arrival> edges) {
        List<Arrival> byArrival = edges.stream().sorted(Comparator.comparingLong(Arrival::arrivalNs)).toList();
        List<LineReader> three = threeLines();
        List<Long> times = new ArrayList<>();
        EdgeMerger order = new EdgeMerger(three, (channel, active, timeNs) -> times.add(timeNs), 2 * MS);
        long[] lastNs = new long[three.size()];
        int count = 0;
        for (Arrival each : byArrival) {
            for (long nowNs = each.arrivalNs() - 3 * MS; nowNs < each.arrivalNs(); nowNs += 100_000) {
                order.turn(nowNs);
            }
            // A line's own edges come in order: an edge overtaken on its way is not the kernel's.
            if (each.timeNs >= lastNs[each.line]) {
                lastNs[each.line] = each.timeNs;
                three.get(each.line).ring().offer(true, each.timeNs, each.arrivalNs());
                count++;
            }
        }
        order.drain();
        assertThat(times).isSorted().hasSize(count);
        assertThat(three).allSatisfy(line -> assertThat(line.counters().health("").late()).isZero());
    }

    record Arrival(int line, long timeNs, long lagNs) {
        long arrivalNs() {
            return timeNs + lagNs;
        }
    }

    @Provide
    Arbitrary<List<Arrival>> arrivals() {
        return Combinators.combine(Arbitraries.integers().between(0, 2),
                Arbitraries.longs().between(1, 20_000).map(each -> each * 1000),
                Arbitraries.longs().between(0, 2 * MS - 1)).as(Arrival::new).list().ofMaxSize(100);
    }

    private static List<LineReader> threeLines() {
        return IntStream.range(0, 3).mapToObj(i -> new LineReader(
                new Channel("line-" + i, Channel.Kind.BEAM, i, Channel.Level.HIGH, Channel.Pull.UP),
                channel -> null, new EdgeRing(1024), () -> 0, pauseNs -> { })).toList();
    }

    private void arrives(int line, boolean active, long timeNs, long arrivalNs) {
        assertThat(lines.get(line).ring().offer(active, timeNs, arrivalNs)).isTrue();
    }

    private void turnUntilIdle(long nowNs) {
        while (merger.turn(nowNs) == 0) {
            assertThat(handedOn).hasSizeLessThan(100);
        }
    }
}

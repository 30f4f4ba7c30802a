package org.cupbeam.edge.board;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.cupbeam.edge.ChannelHealth;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Channel.Level;
import org.cupbeam.rig.Channel.Pull;
import org.junit.jupiter.api.Test;

class LineReaderTest {
    private static final Channel CUP = new Channel("cup", Channel.Kind.CUP, 17, Level.HIGH, Pull.UP);
    private static final Channel ACTIVE_LOW = new Channel("cup", Channel.Kind.CUP, 17, Level.LOW, Pull.OFF);

    private final FakeClock clock = new FakeClock();
    private final FakeLine line = new FakeLine(clock);
    private final EdgeRing ring = new EdgeRing(16);
    private final List<Long> pausesNs = new ArrayList<>();
    private LineReader reader = reader(CUP);

    @Test
    void anEdgeHasTheKernelsTimeNotThatOfItsReading() {
        reader.turn();
        line.set(true, clock.nowNs + 100);
        clock.nowNs += 7_000_000;
        reader.turn();
        assertThat(edges()).containsExactly("on 5000000100");
        assertThat(health().worstLagNs()).isEqualTo(6_999_900);
        assertThat(health().kernelTime()).isTrue();
    }

    @Test
    void aQuietLineStaysQuiet() {
        turns(5);
        assertThat(edges()).isEmpty();
        assertThat(health()).isEqualTo(new ChannelHealth("cup", 0, 0, 0, 0, 0, 0, true, clock.nowNs - LineReader.WAIT_NS, ""));
    }

    @Test
    void aLineThatIsActiveWhenOpenedIsAnEdge() {
        line.set(true);
        reader.turn();
        assertThat(edges()).containsExactly("on 5000000000");
        assertThat(health().lost()).isZero();
    }

    @Test
    void activeLowTurnsLevelsAndEdgesRound() {
        reader = reader(ACTIVE_LOW);
        reader.turn();
        line.set(true, clock.nowNs + 5);
        reader.turn();
        line.set(false, clock.nowNs + 9);
        reader.turn();
        assertThat(edges()).containsExactly("on 5000000000", "off 5000000005", "on 5000000009");
        assertThat(line.channel.pull()).isEqualTo(Pull.OFF);
    }

    @Test
    void anEdgeThatTheLevelReadAtOpeningHasInItIsNotToldAgain() {
        line.set(true);
        reader.turn();
        line.set(false);
        line.set(true);
        turns(2);
        assertThat(edges()).containsExactly("on 5000000000");
        assertThat(health().lost()).isZero();
    }

    @Test
    void anEdgeWhileTheLevelIsReadAtOpeningIsNeitherMissedNorTakenForALoss() {
        line.whileLevelIsRead = () -> {
            clock.nowNs += 1_000;
            line.set(true);
            clock.nowNs += 1_000;
        };
        reader.turn();
        line.whileLevelIsRead = () -> { };
        turns(3);
        assertThat(edges()).containsExactly("on 5000001000");
        assertThat(health().lost()).isZero();
    }

    @Test
    void whatTheKernelHadNoRoomForIsProvedLostAndTheStateSetRight() {
        reader.turn();
        for (int i = 1; i <= 17; i++) {
            line.set(i % 2 == 1, clock.nowNs + i);
        }
        turns(16);
        assertThat(edges()).hasSize(16).last().isEqualTo("off 5000000016");
        assertThat(health().lost()).isZero();

        turns(1);
        assertThat(edges()).isEmpty();
        turns(1);
        assertThat(edges()).containsExactly("on 5050000000");
        assertThat(health().lost()).isEqualTo(1);
    }

    @Test
    void twoEdgesInOneDirectionProveOneLost() {
        reader.turn();
        for (int i = 1; i <= 17; i++) {
            line.set(i % 2 == 1, clock.nowNs + i);
        }
        reader.turn();
        line.set(false, clock.nowNs + 18);
        turns(16);
        assertThat(health().lost()).isEqualTo(1);
        assertThat(edges()).hasSize(16);
        turns(5);
        assertThat(edges()).isEmpty();
        assertThat(health().lost()).isEqualTo(1);
    }

    @Test
    void stampsOfAnotherClockAreNotBelieved() {
        reader.turn();
        clock.nowNs += 1_000;
        line.set(true, clock.nowNs - 3_000_000_000L);
        reader.turn();
        clock.nowNs += 1_000;
        line.set(false, clock.nowNs - 2_900_000_000L);
        reader.turn();
        assertThat(edges()).containsExactly("on 5000001000", "off 5000002000");
        assertThat(health().kernelTime()).isFalse();
    }

    @Test
    void anEdgeReadLateByAHeldUpReaderKeepsTheKernelsTime() {
        reader.turn();
        line.set(true, clock.nowNs + 1_000);
        clock.nowNs += 3_000_000_000L;
        reader.turn();
        assertThat(edges()).containsExactly("on 5000001000");
        assertThat(health().kernelTime()).isTrue();
    }

    @Test
    void aLineThatFailsIsAskedForAgainLessAndLessOften() {
        reader.turn();
        line.fail(new IllegalStateException("gone"));
        turns(10);
        assertThat(pausesNs).startsWith(100_000_000L, 200_000_000L, 400_000_000L).endsWith(LineReader.RETRY_MAX_NS)
                .hasSize(10);
        assertThat(line.isOpen).isFalse();
        assertThat(health().fault()).isEqualTo("java.lang.IllegalStateException: gone");

        line.fail(null);
        line.set(true);
        turns(1);
        assertThat(health().fault()).isEmpty();
        assertThat(edges()).hasSize(1);
        assertThat(health().lost()).as("it went active unseen").isEqualTo(1);

        line.fail(new IllegalStateException("again"));
        turns(1);
        assertThat(pausesNs).last().isEqualTo(LineReader.RETRY_MIN_NS);
    }

    @Test
    void noErrorEndsTheReading() {
        line.fail(new UnsatisfiedLinkError("no library"));
        turns(3);
        assertThat(line.openings).isEqualTo(3);
        line.fail(null);
        turns(1);
        assertThat(health().fault()).isEmpty();
    }

    @Test
    void edgesThatNobodyFetchesAreCountedAndDropped() {
        reader.turn();
        for (int i = 1; i <= 20; i++) {
            line.set(i % 2 == 1, clock.nowNs + i);
            reader.turn();
        }
        assertThat(health().edges()).isEqualTo(16);
        assertThat(health().dropped()).isEqualTo(4);
        assertThat(edges()).hasSize(16);
    }

    @Test
    void closingGivesTheLineBack() {
        reader.turn();
        assertThat(line.isOpen).isTrue();
        reader.close();
        assertThat(line.isOpen).isFalse();
        reader.close();
    }

    private LineReader reader(Channel channel) {
        return new LineReader(channel, line, ring, clock, pausesNs::add);
    }

    private void turns(int count) {
        for (int i = 0; i < count; i++) {
            reader.turn();
        }
    }

    private List<String> edges() {
        List<String> edges = new ArrayList<>();
        for (; !ring.isEmpty(); ring.pop()) {
            edges.add((ring.headActive() ? "on " : "off ") + ring.headTimeNs());
        }
        return edges;
    }

    private ChannelHealth health() {
        return reader.counters().health("cup");
    }
}

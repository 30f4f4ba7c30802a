package org.cupbeam.edge.board;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.Mockito.RETURNS_DEEP_STUBS;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.when;

import com.pi4j.Pi4J;
import com.pi4j.context.Context;
import com.pi4j.io.gpio.digital.DigitalInput;
import com.pi4j.io.gpio.digital.DigitalInputConfig;
import com.pi4j.io.gpio.digital.DigitalState;
import com.pi4j.io.gpio.digital.PullResistance;
import com.pi4j.plugin.mock.provider.gpio.digital.MockDigitalInput;
import com.pi4j.plugin.mock.provider.gpio.digital.MockDigitalInputProvider;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalInt;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(120)
class PinEdgesTest {
    private static final Rig RIG = new Rig(10, 0, 0, 914.4, List.of(
            new Channel("cup", Channel.Kind.CUP, 17, Channel.Level.HIGH, Channel.Pull.UP),
            new Channel("pedal", Channel.Kind.PEDAL, 26, Channel.Level.LOW, Channel.Pull.OFF)), List.of(),
            OptionalInt.empty());

    private final Context pi4j = Pi4J.newContextBuilder().add(MockDigitalInputProvider.newInstance())
            .disableShutdownHook().build();
    private final FakeClock clock = new FakeClock();
    private final PinEdges pins = new PinEdges(pi4j, RIG, clock);
    private final List<String> edges = Collections.synchronizedList(new ArrayList<>());
    private final EdgeSink sink = (channel, active, timeNs) ->
            edges.add(RIG.channels().get(channel).name() + (active ? " on " : " off ") + timeNs);

    @AfterEach
    void close() {
        pins.close();
    }

    @Test
    void eachChangeOfAPinIsAnEdgeInMicroseconds() {
        pins.start(sink);
        edges.clear();
        clock.nowNs = 6_000_000_999L;
        input("cup").mockState(DigitalState.HIGH);
        clock.nowNs = 6_000_002_000L;
        input("cup").mockState(DigitalState.HIGH);
        input("cup").mockState(DigitalState.LOW);
        assertThat(edges).containsExactly("cup on 6000000000", "cup off 6000002000");
        assertThat(pins.health()).extracting("channel", "edges", "kernelTime", "lastEdgeNs").contains(
                org.assertj.core.groups.Tuple.tuple("cup", 2L, false, 6_000_002_000L));
    }

    @Test
    void aPinThatIsActiveAtTheStartIsAnEdge() {
        pins.start(sink);
        assertThat(edges).as("the mock's pins start low").containsExactly("pedal on 5000000000");
    }

    @Test
    void pinsAreAskedForAsTheRigSaysAndWithoutDebounce() {
        pins.start(sink);
        assertThat(input("cup").config().pull()).isEqualTo(PullResistance.PULL_UP);
        assertThat(input("pedal").config().pull()).isEqualTo(PullResistance.OFF);
        assertThat(input("pedal").config().address()).isEqualTo(26);
        assertThat(input("cup").config().debounce()).isZero();
    }

    @Test
    void timeNeverGoesBack() {
        pins.start(sink);
        edges.clear();
        clock.nowNs -= 1_000_000;
        input("cup").mockState(DigitalState.HIGH);
        assertThat(edges).containsExactly("cup on 5000000000");
    }

    @Test
    void timeSettlesWhileNothingHappens() throws InterruptedException {
        CountDownLatch settled = new CountDownLatch(2);
        pins.start(new EdgeSink() {
            @Override
            public void edge(int channel, boolean active, long timeNs) {
            }

            @Override
            public void settled(long timeNs) {
                settled.countDown();
            }
        });
        assertThat(settled.await(10, TimeUnit.SECONDS)).isTrue();
    }

    @Test
    void afterClosingNoEdgeComesAndPi4jIsShutDown() {
        pins.start(sink);
        MockDigitalInput cup = input("cup");
        edges.clear();
        pins.close();
        cup.mockState(DigitalState.HIGH);
        assertThat(edges).isEmpty();
        assertThat(pi4j.isShutdown()).isTrue();
        pins.close();
    }

    @Test
    void itStartsOnlyOnce() {
        pins.start(sink);
        assertThatThrownBy(() -> pins.start(sink)).isInstanceOf(IllegalStateException.class);
    }

    @Test
    void aPi4jThatNeverShutsDownIsLeftBehind() {
        CountDownLatch never = new CountDownLatch(1);
        Context hanging = mock(Context.class, RETURNS_DEEP_STUBS);
        DigitalInput input = mock(DigitalInput.class);
        when(input.state()).thenReturn(DigitalState.UNKNOWN);
        when(hanging.create(any(DigitalInputConfig.class))).thenReturn(input);
        when(hanging.shutdown()).then(call -> {
            never.await();
            return hanging;
        });
        PinEdges stuck = new PinEdges(hanging, RIG, clock);
        stuck.start(sink);

        long startNs = System.nanoTime();
        stuck.close();
        assertThat(System.nanoTime() - startNs).isLessThan(2_000_000_000L);
        never.countDown();
    }

    private MockDigitalInput input(String name) {
        return (MockDigitalInput) pi4j.registry().get(name, DigitalInput.class);
    }
}

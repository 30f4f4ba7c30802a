package org.cupbeam.lane;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

class EdgeQueueTest {
    private final AtomicInteger woken = new AtomicInteger();
    private final EdgeQueue queue = new EdgeQueue(8, woken::incrementAndGet);
    private final List<String> taken = new ArrayList<>();

    private int drain() {
        return queue.drainTo((channel, active, timeNs) -> taken.add(channel + (active ? "+" : "-") + timeNs));
    }

    @Test
    void edgesComeOutAsTheyWentIn() {
        queue.edge(3, true, 100);
        queue.edge(0, false, -7);

        assertThat(drain()).isEqualTo(2);
        assertThat(taken).containsExactly("3+100", "0--7");
        assertThat(woken).hasValue(2);
        assertThat(drain()).isZero();
    }

    @Test
    void anEdgeThatFindsNoRoomIsDroppedAndCounted() {
        for (int i = 0; i < 10; i++) {
            queue.edge(1, true, i);
        }
        assertThat(drain()).isEqualTo(8);
        assertThat(queue.dropped()).isEqualTo(2);
        queue.edge(1, true, 10);
        drain();
        assertThat(taken).hasSize(9).endsWith("1+7", "1+10");
    }

    @Test
    @Timeout(20)
    void fromAnotherThreadNoneIsLostNorOutOfOrder() throws InterruptedException {
        int edges = 500_000;
        EdgeQueue shared = new EdgeQueue(1024, () -> { });
        AtomicInteger next = new AtomicInteger();
        Thread source = new Thread(() -> {
            for (int i = 0; i < edges; i++) {
                while (i - next.get() >= 1024) {
                    Thread.onSpinWait();
                }
                shared.edge(i & 7, (i & 8) == 0, i);
            }
        });
        source.start();
        while (next.get() < edges) {
            shared.drainTo((channel, active, timeNs) -> {
                int expected = next.getAndIncrement();
                assertThat(timeNs == expected && channel == (expected & 7) && active == ((expected & 8) == 0)).isTrue();
            });
        }
        source.join();
        assertThat(shared.dropped()).isZero();
    }

    @Test
    void aCapacityThatIsNoPowerOfTwoIsRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> new EdgeQueue(10, () -> { }));
    }
}

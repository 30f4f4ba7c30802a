package org.cupbeam.edge.board;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

class EdgeRingTest {
    @Test
    void whatGoesInComesOutInOrderAndNoMoreThanFits() {
        EdgeRing ring = new EdgeRing(4);
        for (int round = 0; round < 10; round++) {
            for (int i = 0; i < 4; i++) {
                assertThat(ring.offer(i % 2 == 0, i, 10 + i)).isTrue();
            }
            assertThat(ring.offer(true, 9, 9)).isFalse();
            for (int i = 0; i < 4; i++) {
                assertThat(ring.headActive()).isEqualTo(i % 2 == 0);
                assertThat(ring.headTimeNs()).isEqualTo(i);
                assertThat(ring.headArrivalNs()).isEqualTo(10 + i);
                ring.pop();
            }
            assertThat(ring.isEmpty()).isTrue();
        }
    }

    @Test
    void itsCapacityIsAPowerOfTwo() {
        assertThatThrownBy(() -> new EdgeRing(12)).hasMessage("capacity must be a power of two, not 12");
    }

    @Test
    @Timeout(120)
    void oneThreadMayWriteWhileAnotherReads() throws InterruptedException {
        EdgeRing ring = new EdgeRing(64);
        int count = 200_000;
        Thread writer = new Thread(() -> {
            for (int i = 0; i < count; i++) {
                while (!ring.offer(i % 2 == 0, i, -i)) {
                    Thread.onSpinWait();
                }
            }
        });
        writer.start();
        for (int i = 0; i < count; i++) {
            while (ring.isEmpty()) {
                Thread.onSpinWait();
            }
            if (ring.headTimeNs() != i || ring.headArrivalNs() != -i || ring.headActive() != (i % 2 == 0)) {
                throw new AssertionError("torn at " + i);
            }
            ring.pop();
        }
        writer.join();
    }
}

package org.cupbeam.lane;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class WatchdogTest {
    private final AtomicLong now = new AtomicLong(7);
    private final AtomicLong step = new AtomicLong(7);
    private final AtomicInteger bites = new AtomicInteger();
    private final AtomicInteger signs = new AtomicInteger();
    private final Watchdog dog = new Watchdog(now::get, step::get, bites::incrementAndGet,
            signs::incrementAndGet);

    private void look(long secondsLater) {
        now.addAndGet(secondsLater * 1_000_000_000);
        dog.doWork();
    }

    @Test
    void aLoopThatComesRoundIsLeftAlone() {
        for (int i = 0; i < 100; i++) {
            look(9);
            step.set(now.get());
        }
        assertThat(bites).hasValue(0);
        assertThat(signs).hasValue(100);
    }

    @Test
    void aLoopThatHangsGivesNoSignOfLife() {
        look(11);
        look(1);
        look(60);
        assertThat(signs).hasValue(0);
        step.set(now.get());
        look(1);
        assertThat(signs).hasValue(1);
    }

    @Test
    void aLoopThatHangsIsDealtWithOnceAndAgainIfItHangsAgain() {
        look(10);
        look(1);
        look(1);
        look(60);
        assertThat(bites).hasValue(1);
        step.set(now.get());
        look(1);
        look(11);
        look(1);
        assertThat(bites).hasValue(2);
    }

    @Test
    void aProcessThatWasStoppedAsAWholeIsGivenAMoment() {
        look(3600);
        step.set(now.get());
        look(1);
        assertThat(bites).hasValue(0);
    }
}

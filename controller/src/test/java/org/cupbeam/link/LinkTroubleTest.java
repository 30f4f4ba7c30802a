package org.cupbeam.link;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** A link whose broker is away, silent or breaks, stepped by hand. */
class LinkTroubleTest extends SteppedLink {
    @Test
    void aBrokerThatNoLongerAcknowledgesIsLetGo() {
        outbox.last = 1;
        online();
        nowMs += 19_999;
        step();
        assertThat(wire.drops).isZero();
        nowMs += 1;
        step();
        assertThat(wire.drops).isEqualTo(1);
        assertThat(link.online()).isFalse();
        assertThat(link.trouble()).isEqualTo("the broker does not acknowledge");
    }

    @Test
    void aBrokerThatNeverAnswersTheConnectIsLetGo() {
        link.health(Lane.report());
        step();
        nowMs += 15_000;
        step();
        assertThat(wire.drops).isEqualTo(1);
        nowMs += 1000;
        step();
        assertThat(wire.wills).hasSize(2);
    }

    @Test
    void aBrokerThatIsAwayForADayIsTriedAboutOnceAMinuteAndNothingElseIsDone() {
        link.health(Lane.report());
        int worked = 0;
        for (int second = 0; second < 86_400; second++) {
            worked += link.doWork();
            if (wire.wills.size() > wire.drops) {
                wire.fail("Connection refused");
            }
            nowMs += 1000;
        }
        assertThat(wire.wills.size()).isBetween(86_400 / 63, 86_400 / 30 + 10);
        assertThat(worked).as("a step each to connect, hear and fail").isLessThanOrEqualTo(3 * wire.wills.size());
        assertThat(link.trouble()).isEqualTo("Connection refused");
    }

    @Test
    void aConnectionThatBreaksAtOnceEveryTimeIsNotTriedEverySecond() {
        link.health(Lane.report());
        for (int second = 0; second < 600; second++) {
            step();
            if (wire.wills.size() > wire.drops) {
                wire.accept();
                step();
                wire.fail("gone again");
                step();
            }
            nowMs += 1000;
        }
        assertThat(wire.wills.size()).isBetween(10, 25);
    }

    @Test
    void aConnectionThatHeldForAWhileIsTriedAgainSoon() {
        link.health(Lane.report());
        for (int i = 0; i < 8; i++) {
            step();
            wire.fail("away");
            step();
            nowMs += 61_000;
        }
        step();
        wire.accept();
        step();
        wire.acknowledgeAll();
        nowMs += 30_000;
        step();
        int tries = wire.wills.size();
        wire.fail("gone");
        step();
        nowMs += 1000;
        step();
        assertThat(wire.wills).hasSize(tries + 1);
    }
}

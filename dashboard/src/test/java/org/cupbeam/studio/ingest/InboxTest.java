package org.cupbeam.studio.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(20)
class InboxTest {
    private static final long WAIT_MS = 500;

    @Test
    void givesOutWhatCameInItsOrderAndHasRoomAgain() throws Exception {
        Inbox inbox = new Inbox(3, 10_000, WAIT_MS);
        for (int i = 0; i < 3; i++) {
            inbox.offer(message("m" + i, 1));
        }
        assertThat(inbox.take(2, 0)).extracting(Message::topic).containsExactly("m0", "m1");
        assertThat(inbox.take(2, 0)).extracting(Message::topic).containsExactly("m2");
        assertThat(inbox.take(2, 0)).isEmpty();
        assertThat(inbox.droppedSince()).isZero();
    }

    @Test
    void holdsOnlySoManyBytes() throws Exception {
        Inbox inbox = new Inbox(100, 3_000, 1);
        inbox.offer(message("first", 2_000));
        inbox.offer(message("too large now", 2_000));
        inbox.offer(message("small", 10));
        assertThat(inbox.droppedSince()).isEqualTo(1);
        assertThat(inbox.take(100, 0)).extracting(Message::topic).containsExactly("first", "small");
        inbox.offer(message("again", 2_000));
        assertThat(inbox.size()).isEqualTo(1);
    }

    /** Else the broker's acknowledgements, which the same thread brings, would wait once for each. */
    @Test
    void waitsOnceForRoomAndNotAgainUntilThereIsSome() throws Exception {
        Inbox inbox = new Inbox(1, 10_000, WAIT_MS);
        inbox.offer(message("m", 1));
        long fromNs = System.nanoTime();
        for (int i = 0; i < 20; i++) {
            inbox.offer(message("let go", 1));
        }
        assertThat(Duration.ofNanos(System.nanoTime() - fromNs)).isBetween(Duration.ofMillis(WAIT_MS),
                Duration.ofMillis(10 * WAIT_MS));
        assertThat(inbox.droppedSince()).isEqualTo(20);
        inbox.take(1, 0);
        inbox.offer(message("m", 1));
        fromNs = System.nanoTime();
        inbox.offer(message("let go", 1));
        assertThat(Duration.ofNanos(System.nanoTime() - fromNs)).isGreaterThanOrEqualTo(Duration.ofMillis(WAIT_MS));
    }

    private static Message message(String topic, int bytes) {
        return Message.of(topic, new byte[bytes]);
    }
}

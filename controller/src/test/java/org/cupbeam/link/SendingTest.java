package org.cupbeam.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.LongStream;
import org.cupbeam.journal.JournalException;
import org.cupbeam.journal.Outbox;
import org.junit.jupiter.api.Test;

class SendingTest {
    private final FakeOutbox outbox = new FakeOutbox();
    private final Sending sending = new Sending(outbox);
    private long nowS;

    private List<Long> next(int max) throws JournalException {
        return sending.next(max, TimeUnit.SECONDS.toNanos(nowS)).stream().map(Outbox.Row::sequence).toList();
    }

    private List<Long> all(int max) throws JournalException {
        List<Long> all = new ArrayList<>();
        for (List<Long> some = next(max); !some.isEmpty(); some = next(max)) {
            all.addAll(some);
        }
        return all;
    }

    private static List<Long> range(long from, long to) {
        return LongStream.rangeClosed(from, to).boxed().toList();
    }

    @Test
    void whatLiesBeyondStoredGoesOutOnceAndInOrder() throws JournalException {
        outbox.last = 20;
        outbox.stored = 3;
        sending.begin(0);
        assertThat(next(8)).isEqualTo(range(4, 11));
        assertThat(next(0)).isEmpty();
        assertThat(all(8)).isEqualTo(range(12, 20));
        outbox.last = 21;
        assertThat(all(8)).containsExactly(21L);
    }

    @Test
    void aNewConnectionSendsAgainFromStored() throws JournalException {
        outbox.last = 20;
        sending.begin(0);
        all(8);
        outbox.stored = 12;
        sending.begin(0);
        assertThat(all(8)).isEqualTo(range(13, 20));
    }

    @Test
    void whenStoredStandsStillForTenSecondsItGoesOutAgainFromThere() throws JournalException {
        outbox.last = 20;
        sending.begin(0);
        all(8);
        outbox.stored = 15;
        nowS = 9;
        assertThat(next(8)).isEmpty();
        nowS = 18;
        assertThat(next(8)).isEmpty();
        nowS = 19;
        assertThat(all(8)).isEqualTo(range(16, 20));
        nowS = 28;
        assertThat(next(8)).isEmpty();
        nowS = 29;
        assertThat(all(3)).isEqualTo(range(16, 20));
    }

    @Test
    void aHostThatHasStoredEverythingIsNotTroubledHoweverLongNothingHappens() throws JournalException {
        outbox.last = 20;
        sending.begin(0);
        all(8);
        outbox.stored = 20;
        nowS = 3600;
        assertThat(next(8)).isEmpty();
        outbox.last = 21;
        assertThat(all(8)).containsExactly(21L);
        nowS = 3609;
        assertThat(next(8)).as("its ten seconds begin when it went out").isEmpty();
        nowS = 3610;
        assertThat(next(8)).containsExactly(21L);
    }

    @Test
    void aLongOutboxGoesOutOnceButIsNotSentAgainToNobodyAllTheTime() throws JournalException {
        outbox.last = 5000;
        sending.begin(0);
        assertThat(all(8)).hasSize(5000);
        nowS = 10;
        assertThat(all(8)).isEqualTo(range(1, 1000));
        assertThat(next(8)).isEmpty();
        outbox.stored = 700;
        assertThat(all(8)).as("the host is there: on, as it goes").isEqualTo(range(1001, 1700));
        outbox.stored = 4500;
        assertThat(all(8)).isEqualTo(range(4501, 5000));
        outbox.stored = 5000;
        nowS = 100;
        assertThat(next(8)).isEmpty();
    }

    @Test
    void newEventsGoBeforeRepeatedOnes() throws JournalException {
        outbox.last = 20;
        sending.begin(0);
        all(8);
        nowS = 10;
        next(8);
        outbox.last = 22;
        assertThat(next(4)).containsExactly(21L, 22L, 9L, 10L);
        assertThat(all(8)).isEqualTo(range(11, 22));
    }

    @Test
    void aHostThatLostItsStoreGetsWhatIsStillKept() throws JournalException {
        outbox.last = 20;
        outbox.stored = 20;
        sending.begin(0);
        assertThat(next(8)).isEmpty();
        outbox.stored = 2;
        outbox.forgotten = 5;
        assertThat(all(8)).isEqualTo(range(6, 20));
    }

    @Test
    void whatEarlierJournalsLeftGoesOutBesideItsOwnAndAgainUntilTheHostHasIt() throws Exception {
        FakeOutbox outbox = new FakeOutbox();
        for (long sequence = 5; sequence <= 9; sequence++) {
            outbox.leftBehind.add(new Outbox.Row(sequence, FakeOutbox.payload(sequence)));
        }
        outbox.last = 1;
        Sending sending = new Sending(outbox);
        sending.begin(0);
        assertThat(sending.next(4, 0)).extracting(Outbox.Row::sequence).containsExactly(1L, 5L, 6L, 7L);
        assertThat(sending.next(4, 1)).isEmpty();
        outbox.storedOf(FakeOutbox.BEFORE, 6);
        assertThat(sending.next(4, 2)).extracting(Outbox.Row::sequence).containsExactly(7L, 8L, 9L);
        assertThat(sending.next(4, 9_000_000_000L)).isEmpty();
        outbox.stored = 1;
        assertThat(sending.next(4, 10_000_000_002L)).extracting(Outbox.Row::sequence).containsExactly(7L, 8L, 9L);
        outbox.storedOf(FakeOutbox.BEFORE, 200);
        assertThat(sending.next(4, 30_000_000_000L)).isEmpty();
    }
}

package org.cupbeam.studio.lease;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import org.cupbeam.studio.ingest.Batch;
import org.cupbeam.studio.ingest.EventLog;
import org.cupbeam.studio.ingest.NotOurTurn;
import org.junit.jupiter.api.Test;

/** Who keeps events, by hand and with one clock; hosts are held up, the database is out of reach. */
class SuccessionTest {
    private static final Batch NOTHING = new Batch(List.of(), List.of(), List.of());
    private static final long S = 1_000_000_000L;

    private long nowNs;
    private boolean away;
    private long token;
    private long untilNs;
    private final List<Long> commits = new ArrayList<>();

    /** The row in the database. */
    private final class Row implements Lease {
        @Override
        public OptionalLong take(Duration time) {
            reach();
            if (untilNs >= nowNs) {
                return OptionalLong.empty();
            }
            untilNs = nowNs + time.toNanos();
            return OptionalLong.of(++token);
        }

        @Override
        public boolean renew(long mine, Duration time) {
            reach();
            if (mine != token) {
                return false;
            }
            untilNs = nowNs + time.toNanos();
            return true;
        }

        @Override
        public void giveUp(long mine) {
            untilNs = mine == token ? -1 : untilNs;
        }

        @Override
        public void close() {
        }

        private void reach() {
            if (away) {
                throw new IllegalStateException("out of reach");
            }
        }
    }

    private record Nothing() implements EventLog {
        @Override
        public List<EventLog.Kept> kept() {
            return List.of();
        }

        @Override
        public void commit(Batch batch) {
            throw new AssertionError("past the fence");
        }
    }

    private Succession host() {
        return host(() -> false);
    }

    private Succession host(BooleanSupplier isOutOfDate) {
        return new Succession(new Row(), new Nothing(), (batch, mine, time) -> {
            if (mine != token) {
                throw new NotOurTurn("token " + mine);
            }
            commits.add(mine);
        }, isOutOfDate, () -> nowNs);
    }

    @Test
    void oneOfTwoKeepsEventsForAsLongAsItRenews() {
        Succession a = host();
        Succession b = host();
        untilNs = -1;
        for (int second = 0; second < 60; second++, nowNs += S) {
            a.step();
            b.step();
            assertThat(a.log()).isNotNull();
            assertThat(b.log()).isNull();
        }
        assertThat(token).isEqualTo(1);
    }

    @Test
    void theOtherGoesOnWithinSixSecondsOfTheLastRenewal() {
        Succession a = host();
        Succession b = host();
        untilNs = -1;
        a.step();
        nowNs += S;
        int waited = 0;
        for (; b.log() == null; waited++, nowNs += S) {
            b.step();
            assertThat(waited).isLessThan(7);
        }
        assertThat(waited).isGreaterThanOrEqualTo(5);
        assertThat(a.log()).as("it knows by its own clock, too").isNull();
    }

    @Test
    void oneThatWakesUpWritesNothingAndKnowsFromThenOn() {
        Succession a = host();
        Succession b = host();
        untilNs = -1;
        a.step();
        EventLog before = a.log();
        nowNs += 6 * S;
        b.step();
        assertThatThrownBy(() -> before.commit(NOTHING)).isInstanceOf(NotOurTurn.class);
        assertThat(commits).isEmpty();
        b.log().commit(NOTHING);
        assertThat(commits).containsExactly(2L);
        a.step();
        assertThat(a.log()).isNull();
    }

    @Test
    void aLaterTurnIsAnotherLog() {
        Succession a = host();
        Succession b = host();
        untilNs = -1;
        a.step();
        EventLog first = a.log();
        nowNs += 6 * S;
        b.step();
        a.step();
        nowNs += 6 * S;
        a.step();
        assertThat(a.log()).isNotNull().isNotSameAs(first);
        assertThatThrownBy(() -> first.commit(NOTHING)).as("the log of turn 1, in turn 3").isInstanceOf(NotOurTurn.class);
    }

    @Test
    void withoutTheDatabaseItsTimeRunsOutAndBeginsAnewWithIt() {
        Succession a = host();
        untilNs = -1;
        a.step();
        away = true;
        nowNs += 4 * S;
        a.step();
        assertThat(a.log()).as("4 s of 5").isNotNull();
        nowNs += S;
        a.step();
        assertThat(a.log()).isNull();
        away = false;
        nowNs += S;
        a.step();
        assertThat(a.log()).isNotNull();
        assertThat(token).isEqualTo(2);
    }

    @Test
    void oneThatStopsLetsTheOtherGoOnAtOnce() {
        Succession a = host();
        Succession b = host();
        untilNs = -1;
        a.step();
        a.close();
        b.step();
        assertThat(b.log()).isNotNull();
    }

    @Test
    void oneWhoseStoreIsOfANewerVersionByNowLetsTheOtherGoOnAtOnceAndForEver() {
        AtomicBoolean isOutOfDate = new AtomicBoolean();
        Succession older = host(isOutOfDate::get);
        Succession newer = host();
        untilNs = -1;
        older.step();
        isOutOfDate.set(true);
        older.step();
        assertThat(older.log()).isNull();
        newer.step();
        assertThat(newer.log()).isNotNull();
        newer.close();
        older.step();
        assertThat(older.log()).as("the lease is free, but not for it").isNull();
    }

    /** The last commit of a turn is before the first of the next, whatever happens. */
    @Test
    void turnsNeverMix() {
        long seed = Long.getLong("cupbeam.seed", System.nanoTime());
        System.out.println("seed " + seed);
        Random dice = new Random(seed);
        List<Succession> hosts = List.of(host(), host(), host());
        List<EventLog> held = new ArrayList<>();
        untilNs = -1;
        int turns = 0;
        for (int i = 0; i < 20_000; i++) {
            nowNs += dice.nextLong(dice.nextInt(20) == 0 ? 8 * S : S);
            away = dice.nextInt(30) == 0;
            Succession host = hosts.get(dice.nextInt(hosts.size()));
            host.step();
            assertThat(hosts.stream().filter(each -> each.log() != null).count()).as("seed " + seed).isLessThanOrEqualTo(1);
            if (host.log() != null && !held.contains(host.log())) {
                held.add(0, host.log());
                turns++;
            }
            for (EventLog each : held.subList(0, Math.min(3, held.size()))) {
                try {
                    each.commit(NOTHING);
                } catch (NotOurTurn over) {
                    assertThat(over).isNotNull();
                }
            }
        }
        assertThat(turns).isGreaterThan(100);
        assertThat(commits).as("seed " + seed).isSorted();
    }
}

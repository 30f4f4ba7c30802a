package org.cupbeam.edge.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

class PracticeSourceTest {
    private static final PracticeLane LANE = PracticeLane.busy(PracticeRigs.FULL.level());
    private static final long START_NS = 777_000_000_000L;

    private record Edge(int channel, boolean active, long timeNs) {
    }

    private final List<Truth> truths = new ArrayList<>();

    @Test
    void whatIsPlayedDoesNotDependOnHowTimePasses() {
        List<Edge> inOneGo = played(600_000_000_000L);
        List<Truth> once = List.copyOf(truths);
        truths.clear();
        List<Edge> inSteps = played(37_000_000L);

        assertThat(inSteps).isEqualTo(inOneGo).hasSizeGreaterThan(500);
        assertThat(truths).isEqualTo(once);
    }

    @Test
    void noEdgeComesBeforeItsTimeAndAllComeInOrder() {
        Performance performance = performance(1800);
        long[] now = {START_NS};
        long[] before = {0};
        for (; now[0] < START_NS + 300_000_000_000L; now[0] += 10_000_000) {
            performance.playTo(now[0], (channel, active, timeNs) -> {
                assertThat(timeNs).isBetween(before[0], now[0]);
                before[0] = timeNs;
            });
        }
        assertThat(before[0]).isPositive();
    }

    @Test
    void theDrillSaysWhereTheNextPuttIsFrom() {
        double[] station = {914.4};
        Performance performance = new Performance(new LivingLane(1, LANE), START_NS, () -> station[0],
                Player::good, truth -> {
                    truths.add(truth);
                    station[0] += 914.4;
                });
        performance.playTo(START_NS + 60_000_000_000L, (channel, active, timeNs) -> { });

        assertThat(truths).hasSizeGreaterThan(3);
        assertThat(truths.get(0).fromMm()).isEqualTo(914.4);
        assertThat(truths.get(2).fromMm()).isEqualTo(914.4 + 914.4 + 914.4);
    }

    @Test
    void nobodyPuttsWhileThereIsNoStation() {
        performance(Double.NaN).playTo(START_NS + 600_000_000_000L, (channel, active, timeNs) -> { });

        assertThat(truths).isEmpty();
    }

    @Test
    @Timeout(10)
    void closingStopsItAtOnceEvenWhileItWaits() throws InterruptedException {
        CountDownLatch waiting = new CountDownLatch(1);
        Tempo stopped = new Tempo() {
            @Override
            public long nowNs() {
                return 0;
            }

            @Override
            public void awaitNs(long timeNs) throws InterruptedException {
                waiting.countDown();
                new CountDownLatch(1).await();
            }
        };
        PracticeSource source = source(stopped);
        source.start((channel, active, timeNs) -> { });
        assertThat(waiting.await(5, TimeUnit.SECONDS)).isTrue();

        source.close();
        source.close();
    }

    @Test
    @Timeout(20)
    void onAFastClockEdgesComeByThemselves() throws InterruptedException {
        BlockingQueue<Edge> edges = new LinkedBlockingQueue<>();
        try (PracticeSource source = source(Tempo.times(200))) {
            source.start((channel, active, timeNs) -> edges.add(new Edge(channel, active, timeNs)));
            for (int i = 0; i < 20; i++) {
                assertThat(edges.poll(10, TimeUnit.SECONDS)).isNotNull();
            }
        }
    }

    @Test
    void timeThatStandsStillOrRunsAwayIsRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> Tempo.times(0));
        assertThatIllegalArgumentException().isThrownBy(() -> Tempo.times(1e9));
    }

    private PracticeSource source(Tempo tempo) {
        return new PracticeSource(1, LANE, tempo, () -> 1800, Player::good, truth -> { });
    }

    private Performance performance(double stationMm) {
        return new Performance(new LivingLane(1, LANE), START_NS, () -> stationMm, Player::good, truths::add);
    }

    private List<Edge> played(long stepNs) {
        List<Edge> edges = new ArrayList<>();
        Performance performance = performance(1800);
        for (long now = START_NS; now <= START_NS + 600_000_000_000L; now += stepNs) {
            performance.playTo(now, (channel, active, timeNs) -> edges.add(new Edge(channel, active, timeNs)));
        }
        performance.playTo(START_NS + 600_000_000_000L,
                (channel, active, timeNs) -> edges.add(new Edge(channel, active, timeNs)));
        return edges;
    }
}

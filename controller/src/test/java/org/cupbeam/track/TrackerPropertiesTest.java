package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.statistics.Statistics;
import net.jqwik.api.statistics.StatisticsReport;
import net.jqwik.api.statistics.StatisticsReport.StatisticsReportMode;

/** What holds whatever the sensors say, on any rig. */
class TrackerPropertiesTest {

    @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
    @StatisticsReport(StatisticsReportMode.OFF)
    void whatIsToldIsConsistentAndInOrder(@ForAll("tapes") Tape tape) {
        Played played = tape.played();

        isConsistentAndInOrder(tape, played);
        // Else these properties would say little.
        Statistics.label("holed").collect(played.holed() > 0).coverage(c -> c.check(true).percentage(p -> p > 10));
        Statistics.label("finish").collect(played.attempts.stream().anyMatch(each -> each.finishSdMm() > 0))
                .coverage(c -> c.check(true).percentage(p -> p > 15));
    }

    @Property(tries = 300, edgeCases = EdgeCasesMode.NONE)
    void sensorsThatComeAndGoDoNoHarm(@ForAll("tapes") Tape tape, @ForAll long seed) {
        Random random = new Random(seed);
        Played played = new Played();
        Tracker tracker = new Tracker(tape.rig(), played);
        for (Tape.Edge edge : tape.edges()) {
            if (random.nextInt(5) == 0) {
                tracker.setUsable(random.nextInt(tape.rig().channels().size()), random.nextBoolean());
            }
            tracker.edge(edge.channel(), edge.active(), edge.timeNs());
        }
        tracker.end();

        isConsistentAndInOrder(tape, played);
    }

    private static void isConsistentAndInOrder(Tape tape, Played played) {
        assertThat((long) played.attempts.size()).isLessThanOrEqualTo(tape.rises());
        long resolvedNs = Long.MIN_VALUE;
        for (Attempt attempt : played.attempts) {
            assertThat(attempt.resolvedNs()).as("%s", attempt).isGreaterThanOrEqualTo(attempt.timeNs())
                    .isGreaterThanOrEqualTo(resolvedNs);
            resolvedNs = attempt.resolvedNs();
            isConsistent(attempt);
        }
    }

    private static void isConsistent(Attempt attempt) {
        double low = attempt.betweenLowMm();
        double high = attempt.betweenHighMm();
        if (attempt.holed()) {
            assertThat(List.of(attempt.finishMm(), attempt.finishSdMm(), low, high)).as("%s", attempt)
                    .allMatch(mm -> Double.isNaN(mm));
            assertThat(attempt.rim()).isFalse();
        } else if (Double.isNaN(attempt.finishMm())) {
            assertThat(attempt.finishSdMm()).as("%s", attempt).isNaN();
            assertThat(low > high).as("%s", attempt).isFalse();
        } else {
            assertThat(attempt.finishSdMm()).as("%s", attempt).isPositive().isFinite();
            assertThat(attempt.finishMm()).as("%s", attempt).isFinite().isBetween(low, high);
        }
        assertThat(List.of(attempt.finishMm(), attempt.finishSdMm(), low, high, attempt.paceMm(),
                attempt.speedAtHoleMmPerS())).as("%s", attempt).noneMatch(value -> Double.isInfinite(value));
        assertThat(attempt.speedAtHoleMmPerS() < 0).as("%s", attempt).isFalse();
    }

    @Property(tries = 300, edgeCases = EdgeCasesMode.NONE)
    void theSameEdgesMakeTheSameAttemptsToTheBit(@ForAll("tapes") Tape tape) {
        isTheSame(tape.played(), tape.played());
    }

    @Property(tries = 500, edgeCases = EdgeCasesMode.NONE)
    void timeThatPassesBetweenEdgesChangesNothing(@ForAll("tapes") Tape tape, @ForAll long seed) {
        Random random = new Random(seed);
        Played interrupted = new Played();
        Tracker tracker = new Tracker(tape.rig(), interrupted);
        long lastNs = 0;
        for (Tape.Edge edge : tape.edges()) {
            for (int i = random.nextInt(4); i > 0 && edge.timeNs() > lastNs; i--) {
                lastNs += (long) (random.nextDouble() * (edge.timeNs() - lastNs));
                tracker.advance(lastNs);
            }
            tracker.edge(edge.channel(), edge.active(), edge.timeNs());
            lastNs = edge.timeNs();
            if (random.nextBoolean()) {
                tracker.advance(lastNs);
            }
        }
        tracker.end();

        isTheSame(interrupted, tape.played());
    }

    @Property(tries = 300, edgeCases = EdgeCasesMode.NONE)
    void itDoesNotMatterWhenTheClockBegan(@ForAll("tapes") Tape tape,
                                          @ForAll @LongRange(min = -1L << 60, max = 1L << 60) long shiftNs) {
        List<Attempt> shifted = tape.shifted(shiftNs).played().attempts;

        assertThat(shifted.stream().map(a -> new Attempt(a.timeNs() - shiftNs, a.resolvedNs() - shiftNs, a.outcome(),
                a.finishMm(), a.finishSdMm(), a.betweenLowMm(), a.betweenHighMm(), a.speedAtHoleMmPerS(), a.paceMm(),
                a.rim())).toList()).isEqualTo(tape.played().attempts);
    }

    /** Whoever asks {@link Tracker#dueNs} when to look again misses nothing that one hears who looks all the time. */
    @Property(tries = 300, edgeCases = EdgeCasesMode.NONE)
    void nothingIsDueUnannounced(@ForAll("tapes") Tape tape) {
        Played restless = new Played();
        Played patient = new Played();
        Tracker looked = new Tracker(tape.rig(), restless);
        Tracker waited = new Tracker(tape.rig(), patient);
        long nowNs = 0;
        for (Tape.Edge edge : tape.edges()) {
            long stepNs = Math.max(1, (edge.timeNs() - nowNs) / 8);
            for (; nowNs <= edge.timeNs(); nowNs += stepNs) {
                looked.advance(nowNs);
                if (nowNs >= waited.dueNs()) {
                    waited.advance(nowNs);
                }
                assertThat(patient.attempts).hasSameSizeAs(restless.attempts);
                assertThat(patient.gestures).hasSameSizeAs(restless.gestures);
            }
            nowNs = edge.timeNs();
            looked.edge(edge.channel(), edge.active(), nowNs);
            waited.edge(edge.channel(), edge.active(), nowNs);
        }
    }

    private static void isTheSame(Played one, Played other) {
        assertThat(one.attempts).isEqualTo(other.attempts);
        assertThat(one.gestures).isEqualTo(other.gestures);
    }

    @Provide
    Arbitrary<Tape> tapes() {
        return AnyTape.tapes();
    }
}

package org.cupbeam.lane;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.cupbeam.event.Command;
import org.cupbeam.event.Data;
import org.cupbeam.event.Event;
import org.cupbeam.event.Score;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Whatever the wall clock shows, and wherever it jumps: play, order and intervals are the same. */
class WallClockTest {
    private static final Instant RIGHT = Instant.parse("2026-10-24T23:59:59Z");
    @TempDir
    Path folder;

    /** What the wall clock does after each putt, and what it showed at first. */
    record Clock(String name, Instant first, Duration... jumps) {
        @Override
        public String toString() {
            return name;
        }
    }

    static Stream<Clock> clocks() {
        Duration hour = Duration.ofHours(1);
        return Stream.of(new Clock("1970, then set", Instant.EPOCH, Duration.between(Instant.EPOCH, RIGHT)),
                new Clock("an hour back", RIGHT, hour.negated(), Duration.ZERO, hour.negated()),
                new Clock("a day on, and back", RIGHT, Duration.ofDays(1), Duration.ofDays(-1)),
                new Clock("over the end of summer time in Europe", Instant.parse("2026-10-25T00:59:58Z")),
                new Clock("over its beginning", Instant.parse("2027-03-28T00:59:58Z")));
    }

    @ParameterizedTest
    @MethodSource("clocks")
    void upsetsNoScoreNoOrderAndNoInterval(Clock clock) {
        Played right = played("right.db", new Clock("right", RIGHT));
        Played other = played("other.db", clock);

        assertThat(other.scores()).isEqualTo(right.scores());
        assertThat(other.events()).extracting(Event::sequence, event -> event.data().stamp().monotonicNs(),
                event -> event.data().getClass()).isEqualTo(right.events().stream().map(event ->
                tuple(event.sequence(), event.data().stamp().monotonicNs(),
                        event.data().getClass())).toList());
    }

    @Test
    void aBoardThatStartsIn1970TellsOnceHowItsTimesAreSetRight() {
        try (SteppedLane lane = new SteppedLane(folder.resolve("lane.db"))) {
            lane.wall = Instant.EPOCH;
            lane.synchronised = false;
            lane.open().hole().pass(2_000).crash();
            assertThat(lane.events()).singleElement().extracting(Event::data).isInstanceOf(Data.Attempt.class);

            lane.wall = RIGHT;
            lane.synchronised = true;
            lane.pass(1_000).crash().pass(1_000);

            assertThat(lane.events()).hasSize(2);
            Data.Clock clock = (Data.Clock) lane.events().get(1).data();
            assertThat(clock.wall()).isEqualTo(RIGHT);
            assertThat(clock.stamp().boot()).isEqualTo(lane.events().get(0).data().stamp().boot());
            assertThat(clock.stamp().monotonicNs() - lane.events().get(0).data().stamp().monotonicNs())
                    .as("ns since the putt").isBetween(2_000_000_000L, 4_000_000_000L);
        }
    }

    /** What came of an evening; scores without the runs' names, which are the journal's. */
    private record Played(List<String> scores, List<Event> events) {
    }

    private Played played(String file, Clock clock) {
        try (SteppedLane lane = new SteppedLane(folder.resolve(file))) {
            lane.wall = clock.first();
            lane.open().ask(new Command.Start(SteppedLane.ladder(3, 2), List.of("Ana", "Bo"), SteppedLane.TAGS)).sync();
            for (int i = 0; i < 6; i++) {
                lane.wall = i < clock.jumps().length ? lane.wall.plus(clock.jumps()[i]) : lane.wall.plusSeconds(1);
                if (i % 3 == 2) {
                    lane.takeBack();
                }
                (i % 2 == 0 ? lane.hole() : lane.miss()).sync();
            }
            return new Played(lane.outlet.scores.stream().map(WallClockTest::inShort).toList(), lane.events());
        }
    }

    private static String inShort(Score score) {
        return score.sequence() + " " + score.state() + " " + score.turn() + " " + score.players().stream().map(each ->
                each.player() + each.station() + each.attempts() + each.holed() + each.ballsLeft() + each.putts()).toList();
    }
}

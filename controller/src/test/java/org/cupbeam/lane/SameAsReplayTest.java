package org.cupbeam.lane;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.atomic.AtomicLong;
import org.cupbeam.drill.Play;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.edge.EdgeSource;
import org.cupbeam.edge.practice.Evening;
import org.cupbeam.edge.practice.Fault;
import org.cupbeam.edge.practice.PracticeLane;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.event.Command;
import org.cupbeam.event.Data;
import org.cupbeam.event.Event;
import org.cupbeam.event.EventJson;
import org.cupbeam.event.ReplayLine;
import org.cupbeam.event.Tags;
import org.cupbeam.journal.Journal;
import org.cupbeam.journal.Outbox;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The same edges, live and replayed, come to the same. */
class SameAsReplayTest {
    private static final Command.Start START =
            new Command.Start(SteppedLane.ladder(4, 3), List.of("Ana", "Bo"), Tags.NONE);
    private static final long LATENESS_NS = 5_000_000;

    private long latestNs = LATENESS_NS;
    @TempDir
    Path folder;

    @ParameterizedTest
    @EnumSource(PracticeRigs.class)
    void attemptsAndRunsAreTheSame(PracticeRigs fitted) throws Exception {
        sameOf(PracticeLane.busy(fitted.level()));
    }

    /** What is not believed is decided by edges alone: so a replay believes what the lane did, and no more. */
    @ParameterizedTest
    @EnumSource(PracticeRigs.class)
    void soTheyAreWithSensorsOutOfOrder(PracticeRigs fitted) throws Exception {
        sameOf(PracticeLane.busy(fitted.level()).with(new Fault("past-1", Fault.Kind.STUCK, 100, 400),
                new Fault("cup", Fault.Kind.CHATTERING, 500, 520), new Fault("past-2", Fault.Kind.SILENT, 600, 800)));
    }

    /** A board's readers may be held up; nothing is settled then before their edges are here. */
    @ParameterizedTest
    @EnumSource(PracticeRigs.class)
    void soTheyAreWhenTheSourceIsHeldUp(PracticeRigs fitted) throws Exception {
        latestNs = 300_000_000;
        sameOf(PracticeLane.busy(fitted.level()));
    }

    private void sameOf(PracticeLane lane) throws Exception {
        Rig rig = lane.rig();
        Evening evening = Evening.simulate(11, lane, 120);
        List<String> replayed = new ArrayList<>();
        Replay replay = new Replay(rig, Play.begin(START.drill(), START.players(), rig.limitMm()), replayed::add);
        evening.play(replay);
        replay.end();

        assertThat(live(evening)).isEqualTo(replayed).hasSizeGreaterThan(50);
    }

    /** Time goes on in steps of any length, and edges come a little late, or later than a source usually is. */
    private List<String> live(Evening evening) throws Exception {
        AtomicLong now = new AtomicLong();
        Random steps = new Random(5);
        LaneSettings settings = LaneSettings.of(SteppedLane.TOPICS, evening.rig(), folder.resolve("lane.db"));
        try (Journal<Told> journal = Journal.open(settings.journal(), "north", "bay-3", new ToldCodec(),
                Instant.EPOCH)) {
            Surroundings around = new Surroundings(now::get, 1, () -> Instant.EPOCH, () -> true, "boot", "test");
            LaneAgent agent = new LaneAgent(settings, journal, around, new FakeOutlet(), () -> { });
            agent.play(START);
            Late source = new Late();
            agent.begin(source);
            evening.play((channel, active, timeNs) -> {
                source.nextNs = timeNs;
                while (now.get() < timeNs) {
                    long toNs = timeNs + steps.nextLong(latestNs);
                    now.set(Math.min(toNs, now.get() + 1 + steps.nextLong(3_000_000_000L)));
                    if (now.get() < timeNs) {
                        step(agent);
                    }
                }
                step(agent);
                agent.edges().edge(channel, active, timeNs);
                step(agent);
            });
            source.nextNs = Long.MAX_VALUE;
            for (int i = 0; i < 200; i++) {
                now.addAndGet(1_000_000_000);
                step(agent);
            }
            return lines(journal);
        }
    }

    private static void step(LaneAgent agent) {
        agent.doWork();
        agent.scribe().doWork();
    }

    private static List<String> lines(Journal<Told> journal) throws Exception {
        List<String> lines = new ArrayList<>();
        for (Outbox.Row row : journal.after(0, 100_000)) {
            Event event = EventJson.decode(row.payload());
            if (event.data() instanceof Data.Attempt attempt) {
                lines.add(ReplayLine.attempt(attempt.stamp().monotonicNs(), attempt.putt(),
                        new ReplayLine.Turn(attempt.play().player(), attempt.play().station(), attempt.play().ball(),
                                attempt.play().ballsLeft())));
            } else if (event.data() instanceof Data.RunEnded ended) {
                lines.add(ReplayLine.runEnded(ended.of().player(), ended.stationsCleared(), ended.attempts(),
                        ended.holed(), ended.endedBy()));
            } else if (event.data() instanceof Data.DuelEnded ended) {
                lines.add(ReplayLine.duelEnded(ended.winner()));
            }
        }
        return lines;
    }

    private static final class Late implements EdgeSource {
        private long nextNs;

        @Override
        public void start(EdgeSink sink) {
        }

        @Override
        public long latenessNs() {
            return LATENESS_NS;
        }

        @Override
        public long settledNs(long nowNs) {
            return Math.min(nextNs, nowNs - LATENESS_NS);
        }

        @Override
        public void close() {
        }
    }
}

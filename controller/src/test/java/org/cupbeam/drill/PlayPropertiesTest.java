package org.cupbeam.drill;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import net.jqwik.api.constraints.IntRange;
import org.cupbeam.drill.Happening.DuelEnded;
import org.cupbeam.drill.Happening.Passed;
import org.cupbeam.drill.Happening.Putted;
import org.cupbeam.drill.Happening.RunEnded;
import org.cupbeam.drill.Happening.TakenBack;

/** What holds in any drill, for any number of players, whatever happens. */
class PlayPropertiesTest {
    private static final List<String> NAMES = List.of("A", "B", "C", "D");

    @Property(tries = 3000, edgeCases = EdgeCasesMode.NONE)
    void theRulesAgreeWithThemselvesWrittenPlainly(@ForAll("sketches") Sketch sketch,
                                                   @ForAll @IntRange(min = 1, max = 4) int players,
                                                   @ForAll("moves") List<Move> moves) {
        List<String> names = NAMES.subList(0, players);
        assertThat(told(sketch.drill(), names, moves)).isEqualTo(NaivePlay.told(sketch.drill(), names, moves));
    }

    @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
    void ballsAreNeverNegativeAndARunInPlayHasOneToPutt(@ForAll("sketches") Sketch sketch,
                                                        @ForAll @IntRange(min = 1, max = 4) int players,
                                                        @ForAll("moves") List<Move> moves) {
        Play play = begin(sketch, players);
        for (Move move : moves) {
            Step step = move.on(play);
            play = step.play();
            for (Run run : play.standing().runs()) {
                assertThat(run.visit().left()).isBetween(run.ended() ? 0 : 1, sketch.balls());
                assertThat(run.balls()).isBetween(0, sketch.balls());
                assertThat(run.cleared()).isBetween(0, sketch.stations());
                assertThat(run.station()).isBetween(1, sketch.stations());
            }
            step.happenings().stream().filter(Putted.class::isInstance)
                    .forEach(each -> assertThat(((Putted) each).ballsLeft()).isNotNegative());
        }
    }

    @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
    void takingBackAnyNumberAndPuttingThemAgainRestoresTheStateExactly(
            @ForAll("sketches") Sketch sketch, @ForAll @IntRange(min = 1, max = 4) int players,
            @ForAll("moves") List<Move> before, @ForAll("putts") List<Move> putts) {
        Play start = begin(sketch, players).after(before);
        Play end = start.after(putts);

        Play back = end.after(Collections.nCopies(putts.size(), new Move.TakeBack()));

        assertThat(back).isEqualTo(start);
        assertThat(back.after(putts)).isEqualTo(end);
    }

    @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
    void anyMovesEndInTheStateOfThoseThatStillCount(@ForAll("sketches") Sketch sketch,
                                                    @ForAll @IntRange(min = 1, max = 4) int players,
                                                    @ForAll("moves") List<Move> moves) {
        List<Move> counting = new ArrayList<>();
        for (Move move : moves) {
            int last = lastAttempt(counting);
            if (!(move instanceof Move.TakeBack)) {
                counting.add(move);
            } else if (last >= 0) {
                counting.subList(last, counting.size()).clear();
            }
        }
        assertThat(begin(sketch, players).after(moves)).isEqualTo(begin(sketch, players).after(counting));
    }

    @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
    void everyRunEnds(@ForAll("sketches") Sketch sketch, @ForAll("putts") List<Move> putts) {
        Drill drill = sketch.drill();
        Run run = Run.begin(drill);
        int attempts = 0;
        while (!run.ended()) {
            Putt putt = putts.isEmpty() ? Putt.missed()
                    : ((Move.Attempt) putts.get(attempts % putts.size())).putt();
            run = run.after(drill, Sketch.LIMIT_MM, putt).run();
            attempts++;
            assertThat(attempts).isLessThanOrEqualTo(mostAttempts(sketch));
        }
        assertThat(run.tally().attempts()).isEqualTo(attempts);
        assertThat(run.endedBy()).isNotEqualTo(Optional.of(EndedBy.DUEL));
    }

    @Property(tries = 300, edgeCases = EdgeCasesMode.NONE)
    void everyDuelEndsWithAllRunsEndedAndIsToldOnce(@ForAll("sketches") Sketch sketch,
                                                    @ForAll @IntRange(min = 2, max = 4) int players,
                                                    @ForAll("putts") List<Move> putts) {
        Play play = begin(sketch, players);
        List<Happening> endings = new ArrayList<>();
        for (int attempts = 0; !play.standing().over(); attempts++) {
            assertThat(attempts).isLessThan(players * mostAttempts(sketch));
            Move move = putts.isEmpty() ? new Move.Attempt(Putt.missed()) : putts.get(attempts % putts.size());
            Step step = move.on(play);
            play = step.play();
            step.happenings().stream().filter(each -> !(each instanceof Putted)).forEach(endings::add);
        }
        assertThat(endings).hasSize(players + 1).last().isInstanceOf(DuelEnded.class);
        assertThat(endings).filteredOn(RunEnded.class::isInstance).hasSize(players);
    }

    /** By counting: each visit gives a bounded number of balls, and each step back costs a ball. */
    private static int mostAttempts(Sketch sketch) {
        if (sketch.supply() == Supply.WHOLE_RUN) {
            return sketch.balls() + sketch.holed() * (sketch.stations() + 2 * sketch.balls());
        }
        return sketch.penalty() == Penalty.BACK_ONE ? Run.ATTEMPTS_MAX : sketch.balls() * sketch.stations();
    }

    private static Play begin(Sketch sketch, int players) {
        return Play.begin(sketch.drill(), NAMES.subList(0, players), Sketch.LIMIT_MM);
    }

    private static List<String> told(Drill drill, List<String> names, List<Move> moves) {
        Play play = Play.begin(drill, names, Sketch.LIMIT_MM);
        List<String> told = new ArrayList<>();
        List<Integer> lengths = new ArrayList<>();
        for (Move move : moves) {
            Step step = move.on(play);
            play = step.play();
            if (move instanceof Move.Attempt) {
                lengths.add(told.size());
            }
            for (Happening happening : step.happenings()) {
                if (happening instanceof TakenBack) {
                    told.subList(lengths.remove(lengths.size() - 1), told.size()).clear();
                } else if (!(happening instanceof Passed)) {
                    told.add(line(happening));
                }
            }
        }
        return told;
    }

    private static String line(Happening happening) {
        if (happening instanceof Putted putted) {
            return putted.player() + " station " + putted.station() + " ball " + putted.ball() + " left "
                    + putted.ballsLeft() + (putted.holed() ? " holed" : putted.overshot() ? " overshot" : " missed");
        }
        if (happening instanceof RunEnded ended) {
            return ended.player() + " ended " + ended.run().endedBy().orElseThrow().word() + " cleared "
                    + ended.run().cleared() + " attempts " + ended.run().tally().attempts() + " holed "
                    + ended.run().tally().holed();
        }
        return "duel won by " + ((DuelEnded) happening).winner().orElse("nobody");
    }

    private static int lastAttempt(List<Move> moves) {
        for (int i = moves.size() - 1; i >= 0; i--) {
            if (moves.get(i) instanceof Move.Attempt) {
                return i;
            }
        }
        return -1;
    }

    @Provide
    Arbitrary<Sketch> sketches() {
        return Arbitraries.integers().between(1, 5).flatMap(balls -> Combinators.combine(
                Arbitraries.integers().between(1, 5), Arbitraries.of(Supply.class),
                Arbitraries.integers().between(1, balls), Arbitraries.of(Penalty.class), Arbitraries.of(Turns.class))
                .as((stations, supply, holed, penalty, turns) ->
                        new Sketch(stations, balls, supply, holed, penalty, turns)));
    }

    @Provide
    Arbitrary<List<Move>> putts() {
        return attempts().list().ofMaxSize(40);
    }

    @Provide
    Arbitrary<List<Move>> moves() {
        return Arbitraries.frequencyOf(
                Tuple.of(20, attempts()), Tuple.of(4, Arbitraries.just(new Move.TakeBack())),
                Tuple.of(2, Arbitraries.just(new Move.Pass())), Tuple.of(1, Arbitraries.just(new Move.End())))
                .list().ofMaxSize(120);
    }

    /** Mostly holed, so that runs get somewhere; finishes few and coarse, so that scores are often equal. */
    private static Arbitrary<Move> attempts() {
        return Arbitraries.frequencyOf(
                Tuple.of(6, Arbitraries.just(Putt.sunk())),
                Tuple.of(2, Arbitraries.of(-200.0, 100.0, 200.0, 499.9, 500.0).map(Putt::missedAt)),
                Tuple.of(2, Arbitraries.of(500.1, 600.0, 2000.0).map(Putt::missedAt)),
                Tuple.of(1, Arbitraries.just(Putt.missed())),
                Tuple.of(1, Arbitraries.of(100.0, 501.0).map(mm -> Putt.of(false, Double.NaN, mm))))
                .map(Move.Attempt::new);
    }
}

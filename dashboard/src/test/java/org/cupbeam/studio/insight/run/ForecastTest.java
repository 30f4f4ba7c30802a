package org.cupbeam.studio.insight.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.Stream;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.drill.EndedBy;
import org.cupbeam.drill.Move;
import org.cupbeam.drill.Penalty;
import org.cupbeam.drill.Play;
import org.cupbeam.drill.Putt;
import org.cupbeam.drill.Run;
import org.cupbeam.drill.Standing;
import org.cupbeam.drill.Stations;
import org.cupbeam.drill.Supply;
import org.cupbeam.drill.Turns;
import org.cupbeam.studio.insight.make.AngleAndDistance;
import org.cupbeam.studio.insight.make.MakeCurve;
import org.cupbeam.studio.insight.make.Skill;
import org.cupbeam.studio.insight.make.Stroke;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ForecastTest {
    private static final double LIMIT_MM = 914.4;
    private static final MakeCurve CLUB = new AngleAndDistance(Math.toRadians(1.4), 0.09);

    static Stream<Drill> drills() {
        return Stream.of(DrillFile.preset("ladder"), DrillFile.preset("one-ball"), DrillFile.preset("mixed-nine"),
                drill(4, Supply.WHOLE_RUN, 1, Penalty.NONE), drill(5, Supply.WHOLE_RUN, 2, Penalty.LOSE_BALL),
                drill(3, Supply.EVERY_STATION, 1, Penalty.LOSE_BALL), drill(3, Supply.EVERY_STATION, 2, Penalty.NONE),
                drill(4, Supply.WHOLE_RUN, 1, Penalty.BACK_ONE), drill(3, Supply.EVERY_STATION, 1, Penalty.END_RUN));
    }

    /** The chain against the drill itself, played 40,000 times. */
    @ParameterizedTest
    @MethodSource("drills")
    void runsEndAsForeseen(Drill drill) {
        List<Odds> odds = odds(drill, CLUB, 0.25);
        Forecast forecast = Forecast.of(DrillMap.of(drill, LIMIT_MM).orElseThrow(), odds);
        Random random = new Random(11);
        int runs = 40_000;
        int[] cleared = new int[drill.stations().count() + 1];
        double attempts = 0;
        double standing = 0;
        for (int i = 0; i < runs; i++) {
            Run run = play(drill, odds, random);
            cleared[run.cleared()]++;
            attempts += run.tally().attempts();
            standing += forecast.standing(run.cleared(), run.tally().attempts());
        }
        for (int stations = 0; stations < cleared.length; stations++) {
            double share = (double) cleared[stations] / runs;
            double sd = Math.sqrt(forecast.cleared(stations) / runs);
            assertThat(share).as("%s: %d stations", drill.name(), stations)
                    .isCloseTo(forecast.cleared(stations), within(4 * sd + 1e-4));
        }
        assertThat(attempts / runs).isCloseTo(forecast.meanAttempts(), within(0.02 * forecast.meanAttempts()));
        // Whatever the distribution, a run stands at one half among its like on average.
        assertThat(standing / runs).isCloseTo(0.5, within(0.007));
    }

    /** Arithmetic: three balls at each of two stations, every other one drops, so that 7 in 8 visits clear. */
    @Test
    void aShortLadderIsAsArithmeticHasIt() {
        Drill two = new Drill("two", new Stations.Ladder(1000, 1000, 2), 3, Supply.EVERY_STATION, 1,
                OptionalDouble.empty(), Penalty.NONE, Turns.STATION);
        Forecast forecast = Forecast.of(DrillMap.of(two, LIMIT_MM).orElseThrow(),
                List.of(new Odds(0.5, 0), new Odds(0.5, 0)));
        assertThat(forecast.cleared(0)).isCloseTo(1 / 8.0, within(1e-12));
        assertThat(forecast.cleared(1)).isCloseTo(7 / 64.0, within(1e-12));
        assertThat(forecast.atLeast(2)).isCloseTo(49 / 64.0, within(1e-12));
        assertThat(forecast.meanCleared()).isCloseTo(7 / 8.0 + 49 / 64.0, within(1e-12));
        assertThat(forecast.quantile(0.1)).isZero();
        assertThat(forecast.evenStation()).isEqualTo(2);
        assertThat(forecast.quantile(0.2)).isEqualTo(1);
        assertThat(forecast.quantile(0.5)).isEqualTo(2);
        assertThat(forecast.standing(2, 2)).isCloseTo(1 - 0.25 / 2, within(1e-12));
        assertThat(forecast.inWords(2, 2)).isEqualTo("2 stations in 2 putts: better than 88 in 100 of your own runs "
                + "would be.");
        assertThat(forecast.inWords(0, 3)).startsWith("0 stations in 3 putts: 94 in 100 of your own");
    }

    @Test
    void lessKnownOfAPlayerSpreadsWhatMayCome() {
        Drill ladder = DrillFile.preset("ladder");
        DrillMap map = DrillMap.of(ladder, LIMIT_MM).orElseThrow();
        Forecast known = Forecast.of(map, Contender.of(skill(CLUB, 0.01), 0.2), LIMIT_MM);
        Forecast vague = Forecast.of(map, Contender.of(skill(CLUB, 0.6), 0.2), LIMIT_MM);
        assertThat(vague.atLeast(10)).isGreaterThan(known.atLeast(10));
        assertThat(vague.cleared(2)).isGreaterThan(known.cleared(2));
        assertThat(vague.atLeast(0)).isCloseTo(1, within(1e-9));
    }

    @Test
    void aDrillOfFarTooManyStatesIsNotWorkedOut() {
        Drill huge = new Drill("huge", new Stations.Ladder(1000, 100, 100), 100, Supply.WHOLE_RUN, 50,
                OptionalDouble.empty(), Penalty.NONE, Turns.STATION);
        assertThat(DrillMap.of(huge, LIMIT_MM)).isEmpty();
        assertThat(FairTest.of(huge, 6, Contender.of(skill(CLUB, 0.1), 0.2), LIMIT_MM)).isEmpty();
    }

    /** Odds of a duel against duels played by the drill room's rules, 6,000 of them. */
    @Test
    void duelsEndAsForeseen() {
        for (Turns turns : Turns.values()) {
            Drill drill = new Drill("duel", new Stations.Ladder(914.4, 914.4, 6), 3, Supply.EVERY_STATION, 1,
                    OptionalDouble.empty(), Penalty.NONE, turns);
            List<Odds> strong = odds(drill, new AngleAndDistance(Math.toRadians(1.2), 0.08), 0);
            List<Odds> weak = odds(drill, new AngleAndDistance(Math.toRadians(1.7), 0.10), 0);
            DrillMap map = DrillMap.of(drill, LIMIT_MM).orElseThrow();
            DuelOdds expected = DuelOdds.of(Forecast.of(map, strong), Forecast.of(map, weak), 0);
            Random random = new Random(12);
            int duels = 6_000;
            int[] ends = new int[3];
            for (int i = 0; i < duels; i++) {
                Standing over = duel(drill, List.of(strong, weak), random);
                int level = over.runs().get(0).score().cleared() == over.runs().get(1).score().cleared()
                        && over.runs().get(0).score().attempts() == over.runs().get(1).score().attempts() ? 2 : -1;
                ends[level == 2 ? 2 : over.winner().orElseThrow()]++;
            }
            assertThat(ends[0] / (double) duels).isCloseTo(expected.first(), within(0.025));
            assertThat(ends[1] / (double) duels).isCloseTo(expected.second(), within(0.025));
            assertThat(expected.first() + expected.second() + expected.level()).isCloseTo(1, within(1e-9));
        }
    }

    @Test
    void aFairHeadStartIsGivenToTheWeaker() {
        DrillMap map = DrillMap.of(DrillFile.preset("ladder"), LIMIT_MM).orElseThrow();
        Forecast strong = Forecast.of(map, odds(map.drill(), new AngleAndDistance(Math.toRadians(0.9), 0.06), 0.1));
        Forecast weak = Forecast.of(map, odds(map.drill(), new AngleAndDistance(Math.toRadians(2), 0.12), 0.2));
        DuelOdds without = DuelOdds.of(strong, weak, 0);
        HeadStart start = HeadStart.of(weak, strong);
        assertThat(without.even()).isGreaterThan(0.8);
        assertThat(start.firstWeaker()).isTrue();
        assertThat(start.stations()).isPositive();
        assertThat(Math.abs(start.odds().even() - 0.5)).isLessThan(without.even() - 0.5);
        assertThat(start.inWords("Ann", "Bob")).startsWith("Give Ann " + start.stations() + " station");
        HeadStart none = HeadStart.of(strong, strong);
        assertThat(none.stations()).isZero();
        assertThat(DuelOdds.of(strong, strong, 0).even()).isCloseTo(0.5, within(1e-9));
        assertThat(DuelOdds.of(strong, strong, 0).inWords("Ann", "Bob")).isEqualTo("Ann and Bob are an even match.");
    }

    /** On a ladder of putter lengths, from the first to the last player that a studio meets. */
    @Test
    void theStrongerThePlayerTheFewerBallsMakeAFairTest() {
        Drill ladder = DrillFile.preset("ladder");
        double[][] strokes = {{0.6, 0.05}, {0.85, 0.06}, {1.0, 0.065}, {1.3, 0.09}, {1.5, 0.10}, {1.8, 0.12}};
        List<Integer> balls = new ArrayList<>();
        for (double[] stroke : strokes) {
            FairTest fair = FairTest.of(ladder, FairTest.STATION, Contender.of(skill(new Stroke(
                    Math.toRadians(stroke[0]), 300, stroke[1], 0.005, 548.64), 0.1), 0.2), LIMIT_MM).orElseThrow();
            System.out.printf("%.2f degrees, pace %.1f %%: %s%n", stroke[0], 100 * stroke[1], fair.inWords());
            assertThat(fair.best().chance()).isBetween(0.4, 0.6);
            assertThat(fair.options()).isSortedAccordingTo((a, b) ->
                    Double.compare(Math.abs(a.chance() - 0.5), Math.abs(b.chance() - 0.5)));
            balls.add(fair.best().drill().balls());
        }
        assertThat(balls).isSorted();
        assertThat(balls.get(1)).as("a strong player").isEqualTo(3);
        assertThat(balls.get(3)).as("a player still learning").isEqualTo(6);
    }

    private static Run play(Drill drill, List<Odds> odds, Random random) {
        Run run = Run.begin(drill);
        while (!run.ended()) {
            run = run.after(drill, drill.limitMm(LIMIT_MM), putt(odds.get(run.station() - 1), random)).run();
        }
        assertThat(run.endedBy().orElseThrow()).isIn(EndedBy.OUT_OF_BALLS, EndedBy.CLEARED_ALL, EndedBy.OVERSHOOT);
        return run;
    }

    private static Standing duel(Drill drill, List<List<Odds>> odds, Random random) {
        Play play = Play.begin(drill, List.of("A", "B"), LIMIT_MM);
        do {
            int turn = play.standing().turn();
            int station = play.standing().runs().get(turn).station();
            play = play.after(List.of(new Move.Attempt(putt(odds.get(turn).get(station - 1), random))));
        } while (!play.standing().over());
        return play.standing();
    }

    private static Putt putt(Odds odds, Random random) {
        double drawn = random.nextDouble();
        return drawn < odds.holed() ? Putt.sunk()
                : Putt.missedAt(drawn < odds.holed() + odds.overshot() ? 1000 + 500 * random.nextDouble()
                        : 100 + 300 * random.nextDouble());
    }

    private static List<Odds> odds(Drill drill, MakeCurve curve, double overshotShare) {
        List<Odds> odds = new ArrayList<>();
        for (int station = 1; station <= drill.stations().count(); station++) {
            double holed = curve.at(drill.stations().atMm(station));
            odds.add(new Odds(holed, overshotShare * (1 - holed)));
        }
        return odds;
    }

    private static Drill drill(int balls, Supply supply, int holed, Penalty penalty) {
        return new Drill(balls + " balls, " + supply.word() + ", " + penalty.word(),
                new Stations.Ladder(600, 500, 8), balls, supply, holed, OptionalDouble.empty(), penalty, Turns.STATION);
    }

    private static Skill skill(MakeCurve curve, double logOddsSd) {
        return new Skill() {
            @Override
            public MakeCurve curve() {
                return curve;
            }

            @Override
            public double logOddsSd(double distanceMm) {
                return logOddsSd;
            }

            @Override
            public int putts() {
                return 1000;
            }
        };
    }
}

package org.cupbeam.studio.league;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.cupbeam.studio.store.league.Played;
import org.junit.jupiter.api.Test;

/** Who stands where. */
class TableTest {
    private static final double NO_FINISH = Double.NaN;

    @Test
    void moreStationsComeFirstThenFewerPuttsThenNearerMisses() {
        Table table = Table.of(List.of(run(1, "Ada", 4, 20, 300), run(1, "Bo", 5, 40, 900), run(1, "Cy", 4, 19, 900), run(1, "Di", 4, 20, 200)));

        assertThat(table.rows()).extracting(Table.Row::name).containsExactly("Bo", "Cy", "Di", "Ada");
        assertThat(table.rows()).extracting(Table.Row::place).containsExactly(1, 2, 3, 4);
    }

    @Test
    void whoeverIsLevelSharesAPlaceAndTheNextIsPassedOver() {
        Table table = Table.of(List.of(run(1, "Cy", 4, 20, 300), run(1, "Ada", 4, 20, 300), run(1, "Bo", 3, 20, 300), run(1, "Di", 5, 9, 1)));

        assertThat(table.rows()).extracting(Table.Row::name).containsExactly("Di", "Ada", "Cy", "Bo");
        assertThat(table.rows()).extracting(Table.Row::place).containsExactly(1, 2, 2, 4);
        assertThat(table.rows()).extracting(Table.Row::shared).containsExactly(false, true, true, false);
    }

    @Test
    void aRunWithoutAMissIsTheNearestAndOneWhoseMissesHaveNoFinishTheFurthest() {
        Table table = Table.of(List.of(run(1, "Unknown", 4, 20, NO_FINISH), run(1, "Far", 4, 20, 5_000),
                new Played(1, 9, "None", 9, "home", "one", 0, 4, 20, 20, NO_FINISH, 1)));

        assertThat(table.rows()).extracting(Table.Row::name).containsExactly("None", "Far", "Unknown");
        assertThat(table.rows().get(0).sum().missMm()).isZero();
    }

    @Test
    void weeksAreAddedUpAndAWeekInWhichNothingWasClearedAddsNothing() {
        List<Played> best = List.of(run(1, "Ada", 4, 20, 300), run(2, "Ada", 0, 6, 800), run(3, "Ada", 2, 9, 100), run(1, "Bo", 6, 29, 200),
                run(2, "Cy", 0, 7, 100));
        Table table = Table.of(best);

        assertThat(table.rows()).extracting(Table.Row::name).containsExactly("Ada", "Bo", "Cy");
        assertThat(table.rows().get(0).sum()).isEqualTo(new Sum(2, 6, 29, 6, 400_000));
        assertThat(table.rows()).extracting(Table.Row::place).as("29 putts and 200 mm, both").containsExactly(1, 1, 3);
        assertThat(table.rows().get(0).weeks()).containsOnlyKeys(1, 2, 3);
        assertThat(Table.of(best.stream().filter(each -> each.week() == 2).toList()).rows()).extracting(Table.Row::name).containsExactly("Ada", "Cy");
    }

    /** A model written another way: a key of text that sorts as the rules do. */
    @Property(tries = 500)
    void aWeekOfOneRunEachIsInTheDrillsOwnOrder(@ForAll("runs") List<Played> runs) {
        List<Played> one = onePerPlayer(runs);
        List<Integer> expected = one.stream().sorted(Comparator.comparing(TableTest::key).thenComparing(Played::name)
                .thenComparing(Played::player)).map(Played::player).toList();

        assertThat(Table.of(one).rows()).extracting(Table.Row::player).containsExactlyElementsOf(expected);
    }

    @Property(tries = 500)
    void placesAreOneMoreThanThereAreBetterOnes(@ForAll("runs") List<Played> runs) {
        List<Table.Row> rows = Table.of(runs).rows();

        assertThat(rows).hasSize((int) runs.stream().map(Played::player).distinct().count());
        for (Table.Row row : rows) {
            assertThat(row.place()).isEqualTo(1 + (int) rows.stream().filter(each -> each.sum().compareTo(row.sum()) < 0).count());
            assertThat(row.shared()).isEqualTo(rows.stream().filter(each -> each.place() == row.place()).count() > 1);
        }
    }

    @Property(tries = 500)
    void theOrderInWhichRunsComeDoesNotMatter(@ForAll("runs") List<Played> runs, @ForAll long seed) {
        List<Played> other = new ArrayList<>(runs);
        Collections.shuffle(other, new Random(seed));

        assertThat(Table.of(other)).isEqualTo(Table.of(runs));
    }

    /** Of each week so many of each player's runs are handed in, the best by the drill's order. */
    @Property(tries = 1_000)
    void nobodyIsWorseOffForHavingPlayed(@ForAll("runs") List<Played> runs, @ForAll("run") Played another, @ForAll("counting") int counting) {
        List<Played> more = new ArrayList<>(runs);
        more.add(another);
        Sum before = sumOf(another.player(), best(runs, counting));
        Sum after = sumOf(another.player(), best(more, counting));

        assertThat(before == null || after.compareTo(before) <= 0).as("%s, then %s", before, after).isTrue();
    }

    private static Sum sumOf(int player, List<Played> best) {
        return Table.of(best).rows().stream().filter(each -> each.player() == player).map(Table.Row::sum).findFirst().orElse(null);
    }

    private static List<Played> best(List<Played> runs, int counting) {
        return runs.stream().collect(Collectors.groupingBy(each -> List.of(each.week(), each.player()))).values().stream()
                .flatMap(of -> of.stream().sorted(Comparator.comparing(TableTest::key)).limit(counting)).toList();
    }

    private static List<Played> onePerPlayer(List<Played> runs) {
        return runs.stream().collect(Collectors.toMap(Played::player, each -> each, (one, other) -> one)).values().stream()
                .map(each -> new Played(1, each.player(), each.name(), each.run(), each.studio(), each.lane(), 0, each.cleared(),
                        each.attempts(), each.holed(), each.meanMissMm(), 1)).toList();
    }

    private static String key(Played run) {
        double miss = run.attempts() == run.holed() ? 0 : Double.isNaN(run.meanMissMm()) ? 999_999_999 : run.meanMissMm();
        return String.format("%05d %05d %020.9f", 10_000 - run.cleared(), run.attempts(), miss);
    }

    @Provide
    Arbitrary<List<Played>> runs() {
        return run().list().ofMinSize(1).ofMaxSize(40);
    }

    @Provide
    Arbitrary<Integer> counting() {
        return Arbitraries.integers().between(1, 4);
    }

    /** Few different ones, so that there are ties. */
    @Provide
    Arbitrary<Played> run() {
        Arbitrary<Double> miss = Arbitraries.of(NO_FINISH, 100.1, 333.3333333, 0.1, 1_250.7);
        return Combinators.combine(Arbitraries.integers().between(1, 3), Arbitraries.integers().between(1, 6), Arbitraries.integers().between(0, 3),
                Arbitraries.integers().between(3, 6), miss, Arbitraries.of("home", "mill")).as((week, player, cleared, attempts, mm, studio) ->
                new Played(week, player, "P" + player, 7, studio, "one", 0, cleared, attempts, Math.min(cleared, attempts), mm, 1));
    }

    private static Played run(int week, String name, int cleared, int attempts, double missMm) {
        return new Played(week, name.hashCode(), name, 1, "home", "one", 0, cleared, attempts, cleared, missMm, 1);
    }

    @Test
    void namesTheStudiosThatSomebodyPlayedIn() {
        List<Played> two = IntStream.of(1, 2).mapToObj(week -> new Played(week, 1, "Ada", week, week == 1 ? "mill" : "home", "one", 0, 1, 6, 1,
                50, 1)).toList();

        assertThat(Table.of(two).rows().get(0).studios()).containsExactly("home", "mill");
    }
}

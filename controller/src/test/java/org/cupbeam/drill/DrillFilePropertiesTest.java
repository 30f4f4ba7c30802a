package org.cupbeam.drill;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalDouble;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.cupbeam.rig.file.BadFileException;

/** Whatever a drill file says, it is a drill that makes sense, or its problems are told. */
class DrillFilePropertiesTest {
    @Property(tries = 500, edgeCases = EdgeCasesMode.NONE)
    void anyDrillReadsBackFromItsText(@ForAll("drills") Drill drill) throws Exception {
        assertThat(DrillFile.parse("drill.toml", DrillFile.text(drill))).isEqualTo(drill);
    }

    @Property(tries = 300, edgeCases = EdgeCasesMode.NONE)
    void anyText(@ForAll String text) {
        readsOrTellsWhy(text);
    }

    @Property(tries = 1500, edgeCases = EdgeCasesMode.NONE)
    void anyLinesOfADrillFile(@ForAll("lines") List<String> lines) {
        readsOrTellsWhy(String.join("\n", lines));
    }

    private static void readsOrTellsWhy(String text) {
        try {
            assertThat(DrillFile.parse("drill.toml", text).stations().count()).isPositive();
        } catch (BadFileException bad) {
            assertThat(bad.problems()).isNotEmpty();
            assertThat(bad.getMessage().lines()).allMatch(line -> line.matches("drill\\.toml(:\\d+)?: .{8,}"));
        }
    }

    @Provide
    Arbitrary<Drill> drills() {
        Arbitrary<String> names = Arbitraries.strings().withCharRange(' ', '~').withChars("äß\"\\#é漢𝄞")
                .ofMinLength(1).ofMaxLength(30).filter(Drill::isName);
        Arbitrary<Double> places = Arbitraries.doubles().between(Stations.NEAREST_MM, 20_000);
        Arbitrary<Stations> ladders = Combinators.combine(places, Arbitraries.doubles().between(0, 300),
                Arbitraries.integers().between(1, 100)).as(Stations.Ladder::new);
        Arbitrary<Stations> marked = places.list().ofMinSize(1).ofMaxSize(9).map(Stations.Marked::new);
        Arbitrary<OptionalDouble> limits = Arbitraries.doubles().between(0, 10_000).optional()
                .map(limit -> limit.map(OptionalDouble::of).orElse(OptionalDouble.empty()));
        return Arbitraries.integers().between(1, 100).flatMap(balls -> Combinators.combine(
                names, Arbitraries.oneOf(ladders, marked), Arbitraries.of(Supply.class),
                Arbitraries.integers().between(1, balls), limits, Arbitraries.of(Penalty.class),
                Arbitraries.of(Turns.class)).as((name, stations, supply, holed, limit, penalty, turns) ->
                        new Drill(name, stations, balls, supply, holed, limit, penalty, turns)));
    }

    @Provide
    Arbitrary<List<String>> lines() {
        Arbitrary<String> headers = Arbitraries.of("[stations]", "[balls]", "[advance]", "[overshoot]", "[duel]",
                "[[balls]]", "[duel.turns]", "name = \"N\"", "[", "stations = []", "balls = {count = 4}");
        Arbitrary<String> keys = Arbitraries.of("first_mm", "step_mm", "count", "at_mm", "supply", "holed", "limit_mm",
                "penalty", "turns", "name", "\"\"", "'a b'");
        Arbitrary<String> values = Arbitraries.of("10", "-1", "914.4", "nan", "inf", "true", "\"whole-run\"",
                "\"none\"", "\"ball\"", "\"\"", "[]", "[1000, 2000]", "[\"a\"]", "{}", "1979-05-27",
                "9223372036854775807", "=");
        Arbitrary<String> settings = keys.flatMap(key -> values.map(value -> key + " = " + value));
        return Arbitraries.oneOf(headers, settings).list().ofMaxSize(30);
    }
}

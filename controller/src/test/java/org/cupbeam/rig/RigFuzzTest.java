package org.cupbeam.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.cupbeam.rig.file.BadFileException;

/** Whatever a rig file says, it is a rig that makes sense, or its problems are told. */
class RigFuzzTest {
    @Property(tries = 500)
    void anyText(@ForAll String text) {
        readsOrTellsWhy(text);
    }

    @Property(tries = 1500)
    void anyLinesOfARigFile(@ForAll("lines") List<String> lines) {
        readsOrTellsWhy(String.join("\n", lines));
    }

    @Provide
    Arbitrary<List<String>> lines() {
        Arbitrary<String> headers = Arbitraries.of("[green]", "[overshoot]", "[cup]", "[strike]", "[pedal]", "[lamp]",
                "[[beam]]", "[beam]", "[green.cup]", "[[cup]]", "[", "beam = []", "cup = {gpio = 4}");
        Arbitrary<String> keys = Arbitraries.of("stimp_ft", "uphill_percent", "side_percent", "limit_mm", "gpio", "name",
                "position_mm", "height_mm", "active", "pull", "\"\"", "'a b'", "cup.gpio");
        Arbitrary<String> values = Arbitraries.of("10", "-1", "914.4", "nan", "-inf", "true", "\"high\"", "\"low\"",
                "\"past-1\"", "\"\"", "[]", "[1, 2]", "{}", "{a = 1}", "1979-05-27", "9223372036854775807", "0x11", "=");
        Arbitrary<String> settings = keys.flatMap(key -> values.map(value -> key + " = " + value));
        return Arbitraries.oneOf(headers, settings).list().ofMaxSize(30);
    }

    private static void readsOrTellsWhy(String text) {
        try {
            Rig rig = RigFile.parse("rig.toml", text);
            assertThat(rig.channels()).isNotEmpty();
            assertThat(rig.stimpFt()).isBetween(3.0, 20.0);
        } catch (BadFileException problems) {
            assertThat(problems.problems()).isNotEmpty();
            assertThat(problems.getMessage().lines()).allMatch(line -> line.matches("rig\\.toml(:\\d+)?: .{8,}"));
        }
    }
}

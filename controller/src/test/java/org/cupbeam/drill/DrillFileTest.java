package org.cupbeam.drill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.cupbeam.rig.file.BadFileException;
import org.cupbeam.rig.file.Problem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DrillFileTest {
    private static final String WHOLE = """
            name = "Any"
            [stations]
            first_mm = 914.4
            step_mm = 300
            count = 10
            [balls]
            count = 6
            supply = "whole-run"
            [advance]
            holed = 2
            [overshoot]
            limit_mm = 267
            penalty = "back-one"
            [duel]
            turns = "ball"
            """;

    @Test
    void readsEveryKeyThatADrillCanHave() throws Exception {
        assertThat(DrillFile.parse("any.toml", WHOLE)).isEqualTo(new Drill("Any", new Stations.Ladder(914.4, 300, 10),
                6, Supply.WHOLE_RUN, 2, OptionalDouble.of(267), Penalty.BACK_ONE, Turns.BALL));
    }

    @Test
    void stationsCanStandAnywhereInAnyOrder() throws Exception {
        Drill drill = DrillFile.parse("any.toml", with("first_mm = 914.4\nstep_mm = 300\ncount = 10",
                "at_mm = [1200, 2400.5, 1800]"));
        assertThat(drill.stations()).isEqualTo(new Stations.Marked(List.of(1200.0, 2400.5, 1800.0)));
        assertThat(drill.stations().atMm(2)).isEqualTo(2400.5);
    }

    @Test
    void withoutAnOvershootTableTheRigsLimitHoldsAndCostsNothing() throws Exception {
        Drill drill = DrillFile.parse("any.toml",
                with("[overshoot]\nlimit_mm = 267\npenalty = \"back-one\"\n[duel]\nturns = \"ball\"\n", ""));
        assertThat(drill.limitMm(914.4)).isEqualTo(914.4);
        assertThat(drill.penalty()).isEqualTo(Penalty.NONE);
        assertThat(drill.turns()).isEqualTo(Turns.STATION);
    }

    @Test
    void anErrorNamesFileLineKeyWhatIsWrongAndWhatWouldDo() {
        assertThat(problems(with("\"back-one\"", "\"jail\""))).singleElement().asString()
                .isEqualTo("any.toml:13: overshoot.penalty: \"jail\" is not known here;"
                        + " \"none\" or \"lose-ball\" or \"back-one\" or \"end-run\" would do");
    }

    @Test
    void allErrorsOfAFileAreToldTogether() {
        assertThat(problems("[stations]\ncount = 0\n[balls]\ncount = \"six\"\n"))
                .extracting(Problem::key).containsExactlyInAnyOrder("name", "stations.first_mm", "stations.step_mm",
                        "stations.count", "balls.count", "balls.supply", "advance");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "name = \"Any\"   | name = \"\"          | 1  | name               | is empty",
        "name = \"Any\"   | name = \"a\\tb\"     | 1  | name               | has characters that cannot be shown",
        "name = \"Any\"   | name = 7             | 1  | name               | text in quotes is wanted, not 7",
        "first_mm = 914.4 | first_mm = 99        | 3  | stations.first_mm  | 99 is out of range",
        "first_mm = 914.4 | first_mm = nan       | 3  | stations.first_mm  | NaN is out of range",
        "step_mm = 300    | step_mm = -300       | 4  | stations.step_mm   | -300 is out of range",
        "step_mm = 300    | step_mm = 6000       | 5  | stations.count     | the last station would stand at 54914 mm",
        "count = 10       | count = 101          | 5  | stations.count     | 101 is out of range",
        "count = 10       | count = 1.0          | 5  | stations.count     | a whole number is wanted, not 1.0",
        "count = 6        | count = 0            | 7  | balls.count        | 0 is out of range",
        "count = 6        | count = 1            | 10 | advance.holed      | with 1 ball, 2 can never be holed",
        "holed = 2        | holed = 7            | 10 | advance.holed      | with 6 balls, 7 can never be holed",
        "holed = 2        | holed = 0            | 10 | advance.holed      | 0 is out of range",
        "\"whole-run\"    | \"WHOLE_RUN\"        | 8  | balls.supply       | \"WHOLE_RUN\" is not known here",
        "limit_mm = 267   | limit_mm = -1        | 12 | overshoot.limit_mm | -1 is out of range",
        "limit_mm = 267   | limit_mm = true      | 12 | overshoot.limit_mm | a number is wanted, not true",
        "\"ball\"         | 1979-05-27           | 15 | duel.turns         | a date or time is not known here",
        "holed = 2        | holed = 2\\nmade = 1  | 11 | advance.made       | not a key of [advance]",
        "[duel]           | [duels]              | 14 | duels              | not a key of a drill file",
        "first_mm = 914.4 | first_mm             | 3  | ``                 | not TOML: "})
    void whatMakesNoSenseIsToldWhereItStands(String was, String is, int line, String key, String wrong) {
        assertThat(problems(with(was, is.replace("\\n", "\n")))).first().satisfies(problem -> {
            assertThat(problem.file()).isEqualTo("any.toml");
            assertThat(problem.line()).isEqualTo(line);
            assertThat(problem.key()).isEqualTo(key);
            assertThat(problem.wrong()).startsWith(wrong);
        });
    }

    @Test
    void aLadderAndAListOfStationsExcludeEachOther() {
        assertThat(problems(with("count = 10", "at_mm = [1200]"))).extracting(Problem::toString).containsExactly(
                "any.toml:3: stations.first_mm: at_mm already says where the stations are; leave one of the two out",
                "any.toml:4: stations.step_mm: at_mm already says where the stations are; leave one of the two out");
    }

    @ParameterizedTest
    @ValueSource(strings = {"[]", "[1200, 50]", "[1200, \"far\"]", "1200", "[[1200]]"})
    void aListOfStationsHoldsDistancesOnly(String list) {
        assertThat(problems(with("first_mm = 914.4\nstep_mm = 300\ncount = 10", "at_mm = " + list)))
                .singleElement().extracting(Problem::key).isEqualTo("stations.at_mm");
    }

    @Test
    void aStationThatIsWrongIsToldByItsValueAndTheListsLine() {
        assertThat(problems(with("first_mm = 914.4\nstep_mm = 300\ncount = 10", "at_mm = [\n1200,\n50,\n]")))
                .singleElement().asString().startsWith("any.toml:3: stations.at_mm: 50 is out of range; ");
    }

    @Test
    void readsAFileInUtf8AndSaysWhereThereIsNone(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("drill.toml");
        assertThatThrownBy(() -> DrillFile.read(file)).isInstanceOf(BadFileException.class)
                .hasMessage(file + ": no such file; name a drill file");
        Files.writeString(file, with("Any", "Übung für zwei"), StandardCharsets.UTF_8);
        assertThat(DrillFile.read(file).name()).isEqualTo("Übung für zwei");
    }

    @Test
    void thePresetsRead() {
        assertThat(DrillFile.presets()).hasSize(4).allSatisfy(each ->
                assertThat(DrillFile.preset(each).name()).isNotBlank());
        Drill ladder = DrillFile.preset("ladder");
        assertThat(ladder.balls()).isEqualTo(6);
        assertThat(ladder.supply()).isEqualTo(Supply.EVERY_STATION);
        assertThat(ladder.stations().atMm(10)).as("ten putters' lengths").isEqualTo(9144);
    }

    @Test
    void thePresetForLagPuttingIsDecidedByTheFinish() {
        Play play = Play.begin(DrillFile.preset("lag"), List.of("A", "B"), 914.4);
        for (int ball = 0; ball < 8; ball++) {
            play = play.after(Putt.missedAt(-400)).play().after(Putt.missedAt(390)).play();
        }
        assertThat(play.standing().over()).isTrue();
        assertThat(play.standing().winner()).hasValue(1);
    }

    @Test
    void thePresetWithOneBallEndsWithTheFirstMiss() {
        Play play = Play.begin(DrillFile.preset("one-ball"), List.of("A"), 914.4);
        play = play.after(Putt.sunk()).play().after(Putt.sunk()).play().after(Putt.missed()).play();
        assertThat(play.standing().runs().get(0).endedBy()).contains(EndedBy.OUT_OF_BALLS);
        assertThat(play.standing().runs().get(0).cleared()).isEqualTo(2);
    }

    @ParameterizedTest
    @ValueSource(strings = {"nothing", "../drill/ladder", ""})
    void aPresetThatThereIsNotIsRefused(String preset) {
        assertThatThrownBy(() -> DrillFile.preset(preset)).hasMessageContaining("there are [ladder");
    }

    private static String with(String was, String is) {
        assertThat(WHOLE).contains(was);
        return WHOLE.replace(was, is);
    }

    private static List<Problem> problems(String text) {
        return catchThrowableOfType(BadFileException.class, () -> DrillFile.parse("any.toml", text)).problems();
    }
}

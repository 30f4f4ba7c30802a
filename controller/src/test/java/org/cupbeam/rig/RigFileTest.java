package org.cupbeam.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.cupbeam.rig.Channel.Kind;
import org.cupbeam.rig.Channel.Level;
import org.cupbeam.rig.Channel.Pull;
import org.cupbeam.rig.file.BadFileException;
import org.cupbeam.rig.file.Problem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RigFileTest {
    private static final String GREEN = "[green]\nstimp_ft = 10\nuphill_percent = 0.0\n";
    private static final String LIMIT = "[overshoot]\nlimit_mm = 914.4\n";
    private static final String CUP = "[cup]\ngpio = 17\n";
    private static final String HEAD = GREEN + LIMIT + CUP;

    @Test
    void readsEveryKeyThatARigCanHave() throws Exception {
        Rig rig = RigFile.parse("rig.toml", """
                [green]
                stimp_ft = 11
                uphill_percent = -1.5
                side_percent = 0.5
                [overshoot]
                limit_mm = 267
                [cup]
                gpio = 17
                active = "low"
                pull = "off"
                [strike]
                gpio = 27
                [pedal]
                gpio = 26
                pull = "down"
                [lamp]
                gpio = 16
                [[beam]]
                name = "past-2"
                gpio = 23
                position_mm = 974.4
                height_mm = 21.0
                active = "low"
                [[beam]]
                name = "before-1"
                gpio = 22
                position_mm = -300
                height_mm = 21
                """);

        assertThat(rig.stimpFt()).isEqualTo(11);
        assertThat(rig.uphillPercent()).isEqualTo(-1.5);
        assertThat(rig.sidePercent()).isEqualTo(0.5);
        assertThat(rig.limitMm()).isEqualTo(267);
        assertThat(rig.lampGpio()).hasValue(16);
        assertThat(rig.channels()).containsExactly(
                new Channel("cup", Kind.CUP, 17, Level.LOW, Pull.OFF),
                new Channel("strike", Kind.STRIKE, 27, Level.HIGH, Pull.UP),
                new Channel("pedal", Kind.PEDAL, 26, Level.HIGH, Pull.DOWN),
                new Channel("past-2", Kind.BEAM, 23, Level.LOW, Pull.UP),
                new Channel("before-1", Kind.BEAM, 22, Level.HIGH, Pull.UP));
        assertThat(rig.beams()).containsExactly(new Beam(4, -300, 21), new Beam(3, 974.4, 21));
    }

    @Test
    void aCupAloneIsARigAndSoIsOneBeam() throws Exception {
        assertThat(RigFile.parse("r", HEAD).beams()).isEmpty();
        assertThat(RigFile.parse("r", GREEN + LIMIT + beam("b", 5, "100", "21")).channelOf(Kind.CUP)).isEqualTo(-1);
    }

    @Test
    void aRigThatSeesNoBallIsRefused() {
        assertThat(problems(GREEN + LIMIT + "[strike]\ngpio = 3\n")).singleElement().asString()
                .isEqualTo("rig.toml:1: cup: missing, and no [[beam]] either, so that no sensor sees a ball;"
                        + " [cup] or one [[beam]] would do");
    }

    @Test
    void anErrorNamesFileLineKeyWhatIsWrongAndWhatWouldDo() {
        assertThat(problems(HEAD + "[pedal]\ngpio = 17\n")).singleElement().asString()
                .isEqualTo("rig.toml:9: pedal.gpio: 17 is already taken by cup;"
                        + " the SoC's line number (BCM), from 0 to 53, each used once");
    }

    @Test
    void allErrorsOfAFileAreToldTogetherInOrderOfLine() {
        List<Problem> problems = problems("""
                [green]
                stimp_ft = "ten"
                [overshoot]
                limit_mm = 5
                [cup]
                gpio = 1.5
                colour = "red"
                """);
        assertThat(problems).extracting(Problem::line).containsExactly(1, 2, 4, 6, 7);
        assertThat(problems).extracting(Problem::key).containsExactly(
                "green.uphill_percent", "green.stimp_ft", "overshoot.limit_mm", "cup.gpio", "cup.colour");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "stimp_ft = 10       | stimp_ft = 2.9        | green.stimp_ft       | 2.9 is out of range",
        "stimp_ft = 10       | stimp_ft = nan        | green.stimp_ft       | NaN is out of range",
        "stimp_ft = 10       | stimp_ft = true       | green.stimp_ft       | a number is wanted, not true",
        "stimp_ft = 10       | stimp_ft = 1979-05-27 | green.stimp_ft       | a number is wanted, not a date or time",
        "uphill_percent = 0.0| uphill_percent = inf  | green.uphill_percent | Infinity is out of range",
        "limit_mm = 914.4    | limit_mm = 53         | overshoot.limit_mm   | 53 is out of range",
        "limit_mm = 914.4    | limit_mm = [1]        | overshoot.limit_mm   | a number is wanted, not a list",
        "gpio = 17           | gpio = -1             | cup.gpio             | -1 is out of range",
        "gpio = 17           | gpio = 54             | cup.gpio             | 54 is out of range",
        "gpio = 17           | gpio = '17'           | cup.gpio             | a whole number is wanted, not text",
        "gpio = 17           | pin = 17              | cup.gpio             | missing",
        "gpio = 17           | active = 'High'       | cup.active           | \"High\" is not known here",
        "gpio = 17           | pull = 1              | cup.pull             | 1 is not known here",
        "[cup]               | [cups]                | cups                 | not a key of a rig file",
        "[cup]               | [[cup]]               | cup                  | a table is wanted, not a list",
        "[overshoot]         | [over]                | overshoot            | missing",
    })
    void eachValueHasAKindAndARange(String instead, String of, String key, String wrong) {
        assertThat(problems(HEAD.replace(instead.strip(), of.strip().replace('\'', '"'))))
                .anySatisfy(problem -> {
                    assertThat(problem.key()).isEqualTo(key.strip());
                    assertThat(problem.wrong()).isEqualTo(wrong.strip());
                    assertThat(problem.remedy()).isNotEmpty();
                });
    }

    @Test
    void beamsNeedNamesPinsAndPlacesOfTheirOwn() {
        assertThat(problems(HEAD + beam("a", 5, "100", "21") + beam("a", 5, "100.4", "21")))
                .extracting(Problem::key, Problem::wrong).containsExactly(
                        org.assertj.core.groups.Tuple.tuple("beam.name", "\"a\" is also the beam's in line 9"),
                        org.assertj.core.groups.Tuple.tuple("beam.gpio", "5 is already taken by a"),
                        org.assertj.core.groups.Tuple.tuple("beam.position_mm", "100.4 is where a stands"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"cup", "strike", "pedal", "lamp", "", "past 1", "größe", "-x",
            "a-name-that-is-much-too-long-for-a-wire"})
    void aBeamsNameMustFitATraceAndClashWithNoSensor(String name) {
        assertThat(problems(HEAD + beam(name, 5, "100", "21"))).singleElement()
                .satisfies(problem -> assertThat(problem.key()).isEqualTo("beam.name"));
    }

    @Test
    void aBeamAboveABallIsRefused() {
        assertThat(problems(HEAD + beam("a", 5, "100", "45"))).singleElement().asString()
                .contains("rig.toml:12: beam.height_mm: 45 is out of range");
    }

    /** 7a/(5g) is 7.83 % at stimp 10 (computed independently, SciPy). */
    @Test
    void aSlopeOnWhichNoBallStopsIsRefusedWithTheReason() throws Exception {
        assertThat(problems(HEAD.replace("percent = 0.0", "percent = -7.8"))).singleElement().asString()
                .isEqualTo("rig.toml:3: green.uphill_percent: on a slope of 7.8 % no ball comes to rest at stimp 10.0,"
                        + " it runs away; less than 7.4 % would do");
        assertThat(problems(HEAD.replace("percent = 0.0", "percent = 0.0\nside_percent = 9")))
                .singleElement().asString().startsWith("rig.toml:4: green.side_percent: on a slope of 9.0 %");
        assertThat(RigFile.parse("r", HEAD.replace("percent = 0.0", "percent = -7.0")).uphillPercent()).isEqualTo(-7);
    }

    @Test
    void whatIsNoTomlIsToldByLine() {
        assertThat(problems("[green\nstimp_ft = 10")).first().asString().startsWith("rig.toml:1: not TOML: ");
        assertThat(problems(HEAD + "[cup]\n")).first().asString().contains("rig.toml:8: not TOML: cup")
                .endsWith("; one of the two would do");
        assertThatThrownBy(() -> RigFile.parse("rig.toml", "a = " + "[".repeat(60_000)))
                .isInstanceOf(BadFileException.class);
    }

    @Test
    void aFileThatCannotBeReadIsNamed(@TempDir Path folder) throws Exception {
        assertThatThrownBy(() -> RigFile.read(folder)).isInstanceOf(BadFileException.class)
                .hasMessageContaining(folder + ": is a folder");
        assertThatThrownBy(() -> RigFile.read(folder.resolve("none"))).hasMessageContaining("none: no such file");

        Path file = folder.resolve("rig.toml");
        Files.write(file, HEAD.replace("[cup]", "[cup] # größer").getBytes(StandardCharsets.ISO_8859_1));
        assertThatThrownBy(() -> RigFile.read(file)).hasMessageContaining("is not text in UTF-8");

        Files.writeString(file, HEAD + "#".repeat(70_000));
        assertThatThrownBy(() -> RigFile.read(file)).hasMessageContaining("is longer than 32 KiB");

        Files.writeString(file, "\uFEFF" + HEAD.replace("\n", "\r\n"));
        assertThat(RigFile.read(file).stimpFt()).isEqualTo(10);
    }

    @Test
    void listsTwentyMistakesAndSaysHowManyMoreThereAre() {
        List<Problem> told = problems("=\n".repeat(25));
        assertThat(told).hasSize(21).last().hasToString("rig.toml: and 5 more, listed when these are mended");
        assertThat(problems("=\n".repeat(20))).hasSize(20).noneMatch(each -> each.wrong().contains("more"));
    }

    private static String beam(String name, int gpio, String positionMm, String heightMm) {
        return "[[beam]]\nname = \"" + name + "\"\ngpio = " + gpio + "\nposition_mm = " + positionMm
                + "\nheight_mm = " + heightMm + "\n";
    }

    private static List<Problem> problems(String text) {
        return catchThrowableOfType(BadFileException.class, () -> RigFile.parse("rig.toml", text)).problems();
    }

    /** Of these tomlj 1.1.1 throws, where of other faults it gives a list. */
    @ParameterizedTest
    @ValueSource(strings = {"[\"pa\\E\"]", "[\"pa\\U^]\"]", "[[= \"pa\\E\\E]x\"", "a = \"\"\"\\\\\\U\"\"\""})
    void whatTheTomlLibraryFallsOverIsRefusedAsAllElse(String text) {
        assertThatThrownBy(() -> RigFile.parse("rig.toml", HEAD + text)).isInstanceOf(BadFileException.class)
                .hasMessageMatching("(?s)rig\\.toml(:\\d+)?: .*not TOML.*");
    }

    @Test
    void rubbishIsShownShortAndHarmless() {
        assertThatThrownBy(() -> RigFile.parse("rig.toml", HEAD + "\"a\\n\\u001b[31m" + "y".repeat(500) + "\" = 1"))
                .hasMessageStartingWith("rig.toml:8: cup.a\\u000A\\u001B[31my").hasMessageContaining("y…: not a key of [cup]");
        assertThatThrownBy(() -> RigFile.parse("rig.toml", HEAD + "active = \"" + "z".repeat(5_000) + "\""))
                .hasMessageMatching("rig.toml:8: cup.active: \"z{239}…; \"high\" or \"low\" would do");
    }
}

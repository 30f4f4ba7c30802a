package org.cupbeam.commission;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import org.cupbeam.commission.Step.Kind;
import org.cupbeam.edge.practice.Fault;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Channel.Level;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.RigFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Being led through a simulated lane of which nobody has said what hangs where. */
class CourseTest {
    private static final long SEED = Long.getLong("cupbeam.seed", System.nanoTime());

    @Test
    void linesPolarityAndPlacesAreFoundAndTheFileReadsBackTheSame() throws Exception {
        Fitter fitter = new Fitter(SEED, "full").until(Kind.PLACE);
        fitter.course.answer(Double.toString(Math.round(fitter.bench.placesMm().get(0) * 10) / 10.0));
        fitter.until(Kind.DONE);

        Drawn drawn = fitter.course.drawn();
        Rig rig = drawn.rig(Channel.Pull.UP, OptionalInt.of(26));
        Rig back = RigFile.parse("rig.toml", drawn.text(rig));
        assertThat(fitter.course.open()).as("seed %d", SEED).isEmpty();
        assertThat(back).as("seed %d", SEED).isEqualTo(rig);
        assertThat(back.channels()).extracting(Channel::name, Channel::gpio, Channel::active).contains(
                tuple("before-1", 22, Level.HIGH), tuple("past-2", 6, Level.HIGH),
                tuple("pedal", 16, Level.LOW), tuple("strike", 27, Level.LOW),
                tuple("cup", 17, Level.HIGH)).hasSize(9);
        for (int i = 0; i < 6; i++) {
            assertThat(back.beams().get(i).positionMm()).as("beam %d, seed %d", i, SEED)
                    .isCloseTo(fitter.bench.placesMm().get(i), within(8.0));
        }
        assertThat(back.stimpFt()).isCloseTo(fitter.bench.stimpFt(), within(0.3));
        assertThat(back.lampGpio()).hasValue(26);
        assertThat(drawn.text(rig)).contains("by 6 rolled balls", "A quiet minute");
    }

    @Test
    void namesGoByTheOrderInWhichBallsCome() {
        Fitter fitter = new Fitter(SEED, "full").until(Kind.FIND);
        fitter.bench.touch("before-2");
        fitter.bench.touch("before-1");
        fitter.until(Kind.PLACE);

        assertThat(fitter.said).anyMatch(words -> words.contains("changed names") && words.contains("[22, 23, 24, 25, 5, 6]"));
    }

    @Test
    void twoThatTurnTogetherAreNamed() {
        Fitter fitter = new Fitter(SEED, "full").until(Kind.FIND);
        fitter.bench.touch("before-1", "before-2");

        assertThat(fitter.last()).contains("GPIO 22 and GPIO 23 turned together", "block before-1 alone");
        assertThat(fitter.course.step().sensor().name()).isEqualTo("before-1");
        fitter.bench.touch("before-1");
        fitter.bench.touch("before-1");
        assertThat(fitter.last()).contains("that was before-1 (GPIO 22), not before-2");
    }

    @Test
    void whatNeverClearsOrNeverAnswersIsSaidSo() {
        Fitter silent = new Fitter(SEED, "full", new Fault("before-1", Fault.Kind.SILENT, 0, 1000)).until(Kind.FIND);
        silent.bench.touch("before-1");
        silent.bench.rest(31);
        assertThat(silent.last()).contains("no line turned: before-1 never cleared (misaligned), or is unplugged");

        Fitter stuck = new Fitter(SEED, "full", new Fault("before-1", Fault.Kind.STUCK, 5, 1000)).until(Kind.FIND);
        stuck.bench.rest(20);
        assertThat(stuck.last()).contains("GPIO 22 turned, and has not come back", "never cleared: misaligned or unplugged");
    }

    @Test
    void aRestlessLineIsLeftAsideAndALoudMinuteIsNotQuiet() {
        Fitter early = new Fitter(SEED, "full", new Fault("past-1", Fault.Kind.CHATTERING, 0, 1000)).until(Kind.FIND);
        assertThat(early.last()).contains("GPIO 5 turns by itself");

        Fitter fitter = new Fitter(SEED, "cup,before-1", new Fault("before-1", Fault.Kind.CHATTERING, 20, 30)).until(Kind.QUIET);
        fitter.bench.rest(61);
        assertThat(fitter.said).anyMatch(words -> words.matches("before-1 \\(GPIO 22\\) turned \\d+ times in a minute.*"));
        assertThat(fitter.course.step().kind()).isEqualTo(Kind.QUIET);
        fitter.course.answer("");
        fitter.bench.rest(62);
        assertThat(fitter.course.step().kind()).as("the second minute is quiet").isEqualTo(Kind.HEIGHT);
        assertThat(fitter.course.open()).isEmpty();
    }

    @Test
    void aLampOnTheMainsIsKnownByItsTime() {
        List<String> said = new ArrayList<>();
        Lines lines = new Lines(List.of(22));
        QuietMinute minute = new QuietMinute(lines, List.of(new Found(new Wanted(Channel.Kind.BEAM, "before-1"), 0, Level.HIGH)), said::addAll);
        for (int i = 0; i < 100; i++) {
            minute.edge(0, true, i * 10_000_000L);
            minute.edge(0, false, i * 10_000_000L + 1_000_000);
        }
        minute.settled(61_000_000_000L);

        assertThat(said).singleElement().asString().contains("every 10.0 ms, as a lamp on the mains flickers");
    }

    @Test
    void whatIsLeftOutIsNotInTheFile() throws Exception {
        Fitter fitter = new Fitter(SEED, "full").until(Kind.FIND);
        while (fitter.course.step().kind() == Kind.FIND) {
            if (fitter.course.step().sensor().name().matches("cup|past-1|past-2")) {
                fitter.obey();
            } else {
                fitter.course.answer("skip");
            }
        }
        fitter.until(Kind.ROLL).course.answer("skip");
        fitter.course.answer("");
        assertThat(fitter.last()).contains("each place has to be measured");
        fitter.course.answer("914.4");
        fitter.course.answer("974.4 1");
        fitter.course.answer("");
        fitter.course.answer("1.5");
        fitter.course.answer("9.5");

        Rig rig = fitter.course.drawn().rig(Channel.Pull.UP, OptionalInt.empty());
        assertThat(rig.channels()).extracting(Channel::name).containsExactly("cup", "past-1", "past-2");
        assertThat(RigFile.parse("it", fitter.course.drawn().text(rig))).isEqualTo(rig);
        assertThat(fitter.course.drawn().text(rig)).contains("914.4     # measured, ±2.0", "974.4     # measured, ±1.0");
    }

    @ParameterizedTest
    @CsvSource({"-300 mm", "abc", "1e3", "NaN", "'-300,5'", "99999", "-300 0", "-300 1 2", "--300"})
    void aPlaceThatMakesNoSenseIsRefusedInWords(String typed) {
        Fitter fitter = new Fitter(3, "standard").until(Kind.PLACE);
        fitter.course.answer(typed);

        assertThat(fitter.last()).contains("a number from");
        assertThat(fitter.course.step().beam()).isZero();
    }

    @Test
    void placesThatTheBallsContradictAreNotTaken() {
        Fitter fitter = new Fitter(SEED, "standard").until(Kind.PLACE);
        fitter.course.answer("-300");
        fitter.course.answer("-200");
        assertThat(fitter.last()).contains("from before-1 to before-2 it is 100.0 mm by what was entered", "measure again");
        fitter.course.answer("");
        assertThat(fitter.course.step().beam()).isEqualTo(2);
    }

    @Test
    void aBallIsTakenBackAndTooFewAreNotEnough() {
        Fitter fitter = new Fitter(SEED, "standard").until(Kind.ROLL);
        fitter.roll(2);
        fitter.course.answer("undo");
        fitter.course.answer("done");
        assertThat(fitter.last()).contains("not yet", "there are 1 as putts go and 0 back");
        fitter.course.answer("undo");
        assertThat(fitter.last()).contains("no ball yet");
        fitter.course.answer("undo");
        assertThat(fitter.course.step().kind()).isEqualTo(Kind.HEIGHT);
    }

    @Test
    void noBeamMeasuredIsNoPlace() {
        Fitter fitter = new Fitter(SEED, "standard").until(Kind.PLACE);
        for (int i = 0; i < 5; i++) {
            fitter.course.answer("");
        }
        assertThat(fitter.last()).contains("balls beside the hole do not tell where the hole is");
    }

    @Test
    void aSoundLaneIsFoundSound() {
        Fitter fitter = new Fitter(PracticeRigs.STANDARD.level()).until(Kind.DONE);
        assertThat(fitter.course.open()).isEmpty();
    }

    @Test
    void aCheckNamesWhatIsWrong() {
        Fitter stuck = new Fitter(PracticeRigs.STANDARD.level(), new Fault("before-2", Fault.Kind.STUCK, 0, 10_000)).until(Kind.FIND);
        assertThat(stuck.last()).startsWith("before-2 never cleared: misaligned or unplugged");
        assertThat(stuck.course.open()).hasSize(1);

        Rig right = PracticeRigs.STANDARD.level();
        Rig turned = new Rig(10, 0, 0, 914.4, right.channels().stream().map(each -> each.name().equals("cup")
                ? new Channel("cup", each.kind(), each.gpio(), Level.LOW, each.pull()) : each).toList(), right.beams(), OptionalInt.empty());
        Fitter wrong = new Fitter(turned).until(Kind.FIND);
        wrong.obey();
        assertThat(wrong.last()).contains("the wrong way round", "active = \"high\"");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "lamp", "cup,cup", "strike", "before 1", "a,b,", "ä"})
    void sensorsThatMakeNoSenseAreRefused(String text) {
        assertThatThrownBy(() -> Wanted.of(text)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void whateverIsTypedAndDoneNothingBreaks() {
        Random random = new Random(SEED);
        List<String> words = List.of("", "skip", "back", "undo", "done", "help", "-300", "21", "0", "rubbish\u001b[2J", "914.4 3", "yes");
        for (int course = 0; course < 12; course++) {
            Fitter fitter = new Fitter(random.nextLong(), random.nextBoolean() ? "full" : "gate");
            for (int i = 0; i < 120; i++) {
                if (random.nextInt(3) == 0) {
                    fitter.obey();
                } else {
                    fitter.course.answer(words.get(random.nextInt(words.size())));
                }
                assertThat(fitter.course.prompt()).as("seed %d", SEED).isNotBlank();
            }
            assertThat(String.join("", fitter.said)).as("seed %d", SEED).doesNotContain("\u001b");
        }
    }
}

package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.cupbeam.DocTable;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What errors of fitting and of sensors do to a finish, and that the notes say it. */
class ErrorSourcesTest {
    private static final String NOTES = "hardware-notes/errors.md";
    private static final int TAUGHT = 40;
    private static final int DRAWS = 200;
    private static final double FAR_MM = 2000;
    private static final Rig STANDARD = PracticeRigs.STANDARD.level();

    @ParameterizedTest
    @CsvSource({"STANDARD, 300 900 2000", "FULL, 300 900 2000", "GATE, 2000"})
    void theNotesSayWhatEachSourceDoes(PracticeRigs rigs, String finishesMm) throws IOException {
        List<Double> finishes = List.of(finishesMm.split(" ")).stream().map(Double::valueOf).toList();
        List<String> lines = new ArrayList<>();
        List<String> head = new ArrayList<>(List.of("what is not as the rig file says"));
        for (String when : new String[] {"first putt", "after " + TAUGHT}) {
            finishes.forEach(mm -> head.add(when + ", " + mm / 1000 + " m"));
        }
        lines.add(DocTable.row(head));
        lines.add(DocTable.row(head.stream().map(each -> "---").toList()));
        for (ErrorSource source : ErrorSource.all(rigs.level())) {
            List<String> cells = new ArrayList<>(List.of(source.what()));
            for (int before : new int[] {0, TAUGHT}) {
                finishes.forEach(mm -> cells.add(DocTable.mm(source.errorMm(rigs.level(), before, mm))));
            }
            lines.add(DocTable.row(cells));
        }
        DocTable.says(NOTES, rigs.name().toLowerCase(Locale.ROOT), lines);
    }

    @Test
    void theNotesSayWhatNoiseDoes() throws IOException {
        List<String> lines = new ArrayList<>();
        lines.add("| edges scatter by | standard, within | taken for a rim contact | full, within | taken for a rim contact |");
        lines.add("| --- | --- | --- | --- | --- |");
        for (int us : new int[] {25, 50, 100, 200}) {
            List<String> cells = new ArrayList<>(List.of("± " + us + " µs"));
            for (PracticeRigs rigs : new PracticeRigs[] {PracticeRigs.STANDARD, PracticeRigs.FULL}) {
                List<Attempt> told = noisy(rigs.level(), us * 1e-6);
                cells.add(DocTable.mm(told.stream().mapToDouble(each -> Math.abs(each.finishMm() - FAR_MM)).sorted()
                        .toArray()[DRAWS * 9 / 10]));
                cells.add(told.stream().filter(Attempt::rim).count() + " of " + DRAWS);
            }
            lines.add(DocTable.row(cells));
        }
        DocTable.says(NOTES, "noise", lines);
    }

    private static List<Attempt> noisy(Rig rig, double sdS) {
        TrueLane lane = ErrorSource.noisy(rig, sdS);
        return IntStream.range(0, DRAWS).mapToObj(seed -> lane.told(rig, TAUGHT, FAR_MM, seed)).toList();
    }

    @Test
    void theNotesSayWhatAPairsWidthDoes() throws IOException {
        List<String> lines = new ArrayList<>();
        lines.add("| beams of a pair apart by | every beam off by its own ± 1 mm | edges ± 25 µs | edges ± 100 µs |");
        lines.add("| --- | --- | --- | --- |");
        for (int apartMm : new int[] {45, 60, 80, 120}) {
            Rig rig = new RigSketch().beam(-300, 21).beam(-300 + apartMm, 21)
                    .beam(914.4, 21).beam(914.4 + apartMm, 21).rig();
            List<String> cells = new ArrayList<>(List.of(apartMm + " mm"));
            cells.add(DocTable.mm(ErrorSource.everyBeamOff(rig).errorMm(rig, 0, FAR_MM)));
            for (double us : new double[] {25, 100}) {
                cells.add(DocTable.mm(ErrorSource.chance("", ErrorSource.noisy(rig, us * 1e-6)).errorMm(rig, 0, FAR_MM)));
            }
            lines.add(DocTable.row(cells));
        }
        DocTable.says(NOTES, "width", lines);
    }

    /** So a receiver's delay does no harm: only what differs does. */
    @ParameterizedTest
    @EnumSource(value = PracticeRigs.class, names = {"STANDARD", "FULL", "GATE"})
    void aDelayThatAllEdgesShareDoesNothing(PracticeRigs rigs) {
        TrueLane late = TrueLane.of(rigs.level()).with((random, channel, active) -> 300e-6);

        assertThat(late.told(rigs.level(), 0, FAR_MM, 1).finishMm()).isCloseTo(FAR_MM, within(0.01));
    }

    @Test
    void aGreensSpeedMisreadIsLearnt() {
        Rig fast = TrueLane.onGreen(STANDARD, STANDARD.stimpFt() * 1.015, 0);
        double first = TrueLane.of(fast).told(STANDARD, 0, 300, 1).finishMm() - 300;
        double later = TrueLane.of(fast).told(STANDARD, TAUGHT, 300, 1).finishMm() - 300;

        assertThat(Math.abs(first)).isGreaterThan(5);
        assertThat(Math.abs(later)).isLessThan(Math.abs(first) / 20);
    }
}

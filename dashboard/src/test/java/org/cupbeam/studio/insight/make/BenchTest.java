package org.cupbeam.studio.insight.make;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.cupbeam.studio.insight.words.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BenchTest {
    private static final double FT = Units.MM_PER_FT;

    /** Rates attributed to M. Broadie, as quoted by Golfing Focus and second-hand. */
    @ParameterizedTest
    @CsvSource({"2,0.99,", "3,0.96,0.84", "5,0.77,0.50", "8,0.50,0.27", "10,0.40,0.20", "15,0.23,0.11", "30,0.07,0.02",
            "60,0.02,", "1,,", "61,,"})
    void tablesSayWhatWasPublishedAndNoMore(double ft, Double tour, Double ninety) {
        assertThat(Bench.TOUR.at(ft * FT).isPresent()).isEqualTo(tour != null);
        assertThat(Bench.NINETY.at(ft * FT).isPresent()).isEqualTo(ninety != null);
        if (tour != null) {
            assertThat(Bench.TOUR.at(ft * FT).orElseThrow()).isCloseTo(tour, within(1e-9));
        }
        if (ninety != null) {
            assertThat(Bench.NINETY.at(ft * FT).orElseThrow()).isCloseTo(ninety, within(1e-9));
        }
    }

    /** The larger table of professionals' putts lies within two in a hundred of the bench between its rows. */
    @Test
    void theTourBenchAgreesWithTheLargerTable() {
        for (Tries row : PublishedTables.broadie()) {
            Bench.TOUR.at(row.distanceMm()).ifPresent(share ->
                    assertThat(share).isCloseTo(row.proportion().share(), within(0.02)));
        }
    }

    /**
     * That tour players hole about one in four from 12 ft is common practice, no source. The larger table has them hole
     * three in ten from there, and one in four from 14 ft.
     */
    @Test
    void oneInFourFromTwelveFeetIsALittleLessThanTheTablesSay() {
        List<Tries> near = PublishedTables.broadie().stream()
                .filter(row -> row.distanceMm() > 11.9 * FT && row.distanceMm() < 14.5 * FT).toList();
        assertThat(near.get(0).proportion().wilson().low()).isGreaterThan(0.30);
        assertThat(near.get(1).proportion().wilson().low()).isGreaterThan(0.27);
        assertThat(near.get(2).proportion().share()).isCloseTo(0.24, within(0.005));
        assertThat(Bench.TOUR.at(12 * FT).orElseThrow()).isBetween(0.30, 0.33);
        assertThat(Bench.TOUR.at(14 * FT).orElseThrow()).isCloseTo(0.25, within(0.01));
    }

    @Test
    void aPlayersPuttsAreSetAgainstWhatOthersWouldHaveMadeOfThem() {
        List<Tries> rows = List.of(new Tries(8 * FT, 100, 45), new Tries(10 * FT, 50, 14), new Tries(0.5 * FT, 30, 30));
        Comparison tour = Comparison.with(Bench.TOUR, rows).orElseThrow();
        assertThat(tour.putts()).isEqualTo(150);
        assertThat(tour.made()).isEqualTo(59);
        assertThat(tour.expected()).isCloseTo(70, within(1e-9));
        assertThat(tour.inWords()).isEqualTo("Of 150 putts you holed 59; tour professionals would have holed about 70;"
                + " so few putts do not tell the two apart.");
        assertThat(Comparison.with(Bench.NINETY, rows).orElseThrow().inWords())
                .isEqualTo("Of 150 putts you holed 59; golfers who go round in 90 would have holed about 37.");
        assertThat(Comparison.with(Bench.TOUR, List.of(new Tries(100, 3, 3)))).isEmpty();
    }

    @Test
    void aDistanceIsSaidWithEachBenchThatCoversIt() {
        CurveFit fit = CurveFit.of(Shape.ANGLE_AND_DISTANCE, Prior.ANGLE_AND_DISTANCE, List.of(new Tries(8 * FT, 200, 84)));
        assertThat(Comparison.inWords(fit, Bench.published(), 8 * FT, Units.FEET)).matches(
                "From 8 ft you hole \\d\\d in 100 \\(\\d\\d to \\d\\d\\); tour professionals 50 in 100; "
                        + "golfers who go round in 90 27 in 100\\.");
    }

    @Test
    void aPlayerIsSetAgainstTheirOwnPast() {
        CurveFit then = CurveFit.of(Shape.ANGLE_AND_DISTANCE, Prior.ANGLE_AND_DISTANCE, List.of(new Tries(8 * FT, 500, 200)));
        OwnPast better = OwnPast.of(then, List.of(new Tries(8 * FT, 300, 160)));
        assertThat(better.expected()).isCloseTo(120, within(4.0));
        assertThat(better.clear()).isTrue();
        assertThat(better.inWords()).matches("Of 300 putts you holed 160; at your earlier rate about 1[12]\\d would have dropped\\.");
        assertThat(OwnPast.of(then, List.of(new Tries(8 * FT, 30, 14))).inWords()).endsWith(", which may be chance.");
    }

    @Test
    void theNextPuttsAreSaidWithLuckInThem() {
        CurveFit fit = CurveFit.of(Shape.ANGLE_AND_DISTANCE, Prior.ANGLE_AND_DISTANCE, List.of(new Tries(8 * FT, 500, 250)));
        assertThat(NextPutts.of(fit, 8 * FT, 10).inWords(Units.FEET))
                .isEqualTo("Of your next 10 putts from 8 ft 3 to 7 should drop.");
        assertThat(NextPutts.of(fit, 8 * FT, 10).made().mean()).isCloseTo(5, within(0.15));
    }

    @Test
    void studioPlayersStayAnonymous() {
        List<MakeCurve> eight = IntStream.range(1, 9).mapToObj(each -> (MakeCurve) mm -> each / 10.0).toList();
        assertThat(Peers.from(eight.subList(0, 7), 3000)).isEmpty();
        Peers peers = Peers.from(eight, 3000).orElseThrow();
        assertThat(peers.half()).isCloseTo(0.45, within(1e-9));
        assertThat(peers.quarter()).isCloseTo(0.275, within(1e-9));
        assertThat(peers.inWords(0.7, Units.METRIC)).isEqualTo("Among 8 players of this studio, from 3.0 m half hole more "
                + "than 45 in 100; you are in the upper quarter.");
        assertThat(Peers.from(Collections.nCopies(9, mm -> 0.5), 3000).orElseThrow().threeQuarters()).isEqualTo(0.5);
    }
}

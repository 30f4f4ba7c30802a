package org.cupbeam.edge.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

class AimTest {

    @Property(tries = 300)
    void onAnyGreenABallThatIsAimedWellPassesOverTheHoleAndStopsAsFarPastAsMeant(
            @ForAll @DoubleRange(min = 7, max = 13) double stimpFt,
            @ForAll @DoubleRange(min = -2.5, max = 3) double uphillPercent,
            @ForAll @DoubleRange(min = -2.5, max = 2.5) double sidePercent,
            @ForAll @DoubleRange(min = 500, max = 12_000) double fromMm,
            @ForAll @DoubleRange(min = 50, max = 900) double pastMm) {
        Turf turf = Turf.of(stimpFt, uphillPercent, sidePercent, 0.4);

        Passage passage = Passage.of(turf, Aim.at(turf, fromMm, pastMm).start(fromMm));

        assertThat(passage.restMm()).isCloseTo(pastMm, within(0.5));
        assertThat(passage.sideMm()).isCloseTo(0, within(0.5));
    }
}

package org.cupbeam.lane;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Positive;
import org.cupbeam.event.Putt;
import org.cupbeam.event.Tags;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ToldCodecTest {
    private final ToldCodec codec = new ToldCodec();

    private void comesBack(Told told) {
        assertThat(codec.decode(codec.encode(told))).isEqualTo(told);
    }

    @Property
    void aPuttComesBackToTheBit(@ForAll @Positive long sequence, @ForAll double finishMm, @ForAll double lowMm,
            @ForAll boolean overshoot, @ForAll Putt.Outcome outcome, @ForAll Putt.How how) {
        comesBack(new Told.Tried(sequence, new Putt(outcome, finishMm, Double.NaN, lowMm, -0.0, overshoot,
                Double.MIN_VALUE, 1.0 / 3, !overshoot, how)));
    }

    @Test
    void allElseComesBack() {
        comesBack(new Told.Begun(17, SteppedLane.ladder(3, 2), List.of("Ana \"A\" O’Hara, 井", "Bo"), SteppedLane.TAGS, 914.4));
        comesBack(new Told.Begun(1, SteppedLane.ladder(1, 1), List.of("Cy"), new Tags(null, Tags.Slope.LEVEL), 267));
        comesBack(new Told.TakenBack(2));
        comesBack(new Told.Passed(3));
        comesBack(new Told.Ended(4));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "begun", "begun\tx", "tried\t1\tholed", "sung\t1", "begun\t1\t{}\t\t\t1\tAna",
        "tried\t1\tlost\tNaN\tNaN\tNaN\tNaN\tfalse\tNaN\tNaN\tfalse\tsensed"})
    void whatItNeverWroteIsRefused(String line) {
        assertThatIllegalArgumentException().isThrownBy(() -> codec.decode(line));
    }
}

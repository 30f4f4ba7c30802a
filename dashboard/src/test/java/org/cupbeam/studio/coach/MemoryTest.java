package org.cupbeam.studio.coach;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.studio.insight.Question;
import org.cupbeam.studio.insight.shot.Shot;
import org.cupbeam.studio.insight.words.Units;
import org.cupbeam.studio.store.PuttsVersion;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is remembered is bounded by what it takes, and what it takes is told about right. */
class MemoryTest {
    private static final Question QUESTION =
            Question.about(DrillFile.preset("ladder"), 914.4, Units.METRIC, ZoneOffset.UTC);
    private static final PuttsVersion FIRST = new PuttsVersion(1);

    @Test
    void asManyAreKeptAsFitAndTheOneNotAskedForLongestGoes() {
        Portrait portrait = Portrait.of(shots(50), QUESTION);
        Memory memory = new Memory(portrait.bytes() * 3);
        for (int player = 1; player <= 3; player++) {
            memory.keep(new Asked(player, QUESTION), FIRST, portrait);
        }
        assertThat(memory.recall(new Asked(1, QUESTION), FIRST)).isSameAs(portrait);
        memory.keep(new Asked(4, QUESTION), FIRST, portrait);

        assertThat(memory.recall(new Asked(2, QUESTION), FIRST)).isNull();
        assertThat(memory.recall(new Asked(1, QUESTION), FIRST)).isSameAs(portrait);
        assertThat(memory.bytes()).isEqualTo(portrait.bytes() * 3);
    }

    @Test
    void whatIsPutInPlaceOfAnotherCountsOnceAndAnotherVersionIsNotKnown() {
        Portrait portrait = Portrait.of(shots(50), QUESTION);
        Memory memory = new Memory(portrait.bytes() * 3);
        for (int version = 1; version <= 5; version++) {
            memory.keep(new Asked(1, QUESTION), new PuttsVersion(version), portrait);
        }
        assertThat(memory.bytes()).isEqualTo(portrait.bytes());
        assertThat(memory.recall(new Asked(1, QUESTION), FIRST)).isNull();
        assertThat(memory.recall(new Asked(1, QUESTION), new PuttsVersion(5))).isSameAs(portrait);
    }

    @Test
    void whatIsLargerThanAllThatMayBeHeldIsNot() {
        Portrait portrait = Portrait.of(shots(50), QUESTION);
        Memory memory = new Memory(portrait.bytes() - 1);
        memory.keep(new Asked(1, QUESTION), FIRST, portrait);
        assertThat(memory.bytes()).isZero();
        assertThat(memory.recall(new Asked(1, QUESTION), FIRST)).isNull();
    }

    /** Against every object that it leads to, counted one by one. */
    @ParameterizedTest
    @ValueSource(ints = {0, 10, 500, 20_000})
    void whatAPortraitTakesIsToldAboutRight(int putts) {
        Portrait portrait = Portrait.of(shots(putts), QUESTION);
        long counted = Weight.of(portrait);
        System.out.printf("%d putts: told %d, counted %d bytes%n", putts, portrait.bytes(), counted);
        assertThat((double) portrait.bytes() / counted).isBetween(0.6, 3.0);
    }

    private static List<Shot> shots(int putts) {
        Random random = new Random(4);
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < putts; i++) {
            boolean holed = random.nextInt(3) > 0;
            double paceMm = 300 + 200 * random.nextGaussian();
            Shot shot = Shot.of(i / 40, i / 40 * 86_400_000L + i * 60_000L, 914.4 * (1 + random.nextInt(9)), holed)
                    .rolling(paceMm, Math.sqrt(Math.max(0, 1_100 * paceMm)));
            shots.add(holed ? shot : shot.finishing(paceMm));
        }
        return shots;
    }
}

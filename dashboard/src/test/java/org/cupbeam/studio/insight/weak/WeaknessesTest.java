package org.cupbeam.studio.insight.weak;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.cupbeam.studio.insight.make.Tallies;
import org.cupbeam.studio.insight.shot.Break;
import org.cupbeam.studio.insight.shot.Golfer;
import org.cupbeam.studio.insight.shot.Lie;
import org.cupbeam.studio.insight.shot.Sessions;
import org.cupbeam.studio.insight.shot.Shot;
import org.cupbeam.studio.insight.words.Units;
import org.junit.jupiter.api.Test;

class WeaknessesTest {
    @Test
    void aPlantedWeaknessIsFoundAndSaid() {
        Weaknesses found = weaknesses(4000, 3, shot -> shot.breaks() == Break.RIGHT_TO_LEFT ? 1.45 : 1);
        assertThat(found.weak()).extracting(Finding::trait).containsExactly(Trait.RIGHT_TO_LEFT);
        assertThat(found.weak().get(0).perHundred()).isBetween(-17.0, -4.0);
        assertThat(found.weak().get(0).inWords(Units.FEET)).matches(
                "Weak: you hole \\d\\d of 100 right-to-left putts, where your other putts would have \\d\\d\\.");
    }

    @Test
    void fewPuttsSayThatTheySayNothing() {
        Weaknesses found = weaknesses(60, 4, shot -> 1);
        assertThat(found.findings()).hasSize(9).allSatisfy(each -> {
            assertThat(each.verdict()).isEqualTo(Finding.Verdict.UNKNOWN);
            assertThat(each.moreNeeded()).isPositive();
            assertThat(each.inWords(Units.METRIC)).startsWith("Not yet known of ").endsWith(" more would tell.");
        });
    }

    @Test
    void manyPuttsWithoutADifferenceSayThatThereIsNone() {
        Weaknesses found = weaknesses(8000, 5, shot -> 1);
        assertThat(found.weak()).isEmpty();
        assertThat(found.findings()).filteredOn(each -> each.trait().family() == Trait.Family.BREAK)
                .allSatisfy(each -> assertThat(each.verdict()).isEqualTo(Finding.Verdict.ALIKE));
    }

    /** The number promised: with so many more putts, four in five players with such a difference are told of it. */
    @Test
    void asManyMorePuttsAsPromisedTell() {
        Weaknesses before = weaknesses(200, 6, shot -> 1);
        Finding finding = before.findings().stream().filter(each -> each.trait() == Trait.RIGHT_TO_LEFT).findFirst()
                .orElseThrow();
        assertThat(finding.verdict()).isEqualTo(Finding.Verdict.UNKNOWN);
        int all = 3 * (finding.putts() + finding.moreNeeded());
        int told = 0;
        int players = 60;
        for (int player = 0; player < players; player++) {
            // 12 in 100 at even chances.
            Weaknesses after = weaknesses(all, 100 + player, shot -> shot.breaks() == Break.RIGHT_TO_LEFT ? 1.38 : 1);
            told += after.weak().stream().anyMatch(each -> each.trait() == Trait.RIGHT_TO_LEFT) ? 1 : 0;
        }
        System.out.printf("%d putts, seeds 100 on: the difference is told to %d of %d players%n", all, told, players);
        assertThat((double) told / players).isBetween(0.65, 0.95);
    }

    /** With nothing to find, at most one player in twenty is told of a weakness. */
    @Test
    void playersWithoutAWeaknessAreToldOfNone() {
        int players = 200;
        int told = 0;
        for (int player = 0; player < players; player++) {
            told += weaknesses(1500, 1000 + player, shot -> 1).weak().isEmpty() ? 0 : 1;
        }
        System.out.printf("1500 putts, seeds 1000 on: %d of %d players without a weakness are told of one%n", told, players);
        assertThat((double) told / players).isLessThanOrEqualTo(0.05 + 2 * Math.sqrt(0.05 * 0.95 / players));
    }

    /** Partial pooling against none: the same data, a family's effects drawn together. */
    @Test
    void fewPuttsAreDrawnTowardNone() {
        List<Shot> shots = new ArrayList<>(putts(1200, 8, shot -> 1).stream()
                .map(shot -> shot.tagged(Break.STRAIGHT, Lie.UNKNOWN)).toList());
        for (int i = 0; i < 12; i++) {
            shots.add(Shot.of(99, 1_000_000, 1800, i < 3).tagged(Break.LEFT_TO_RIGHT, Lie.UNKNOWN));
        }
        Finding few = Weaknesses.of(Tallies.of(Sessions.of(shots))).findings().stream()
                .filter(each -> each.trait() == Trait.LEFT_TO_RIGHT).findFirst().orElseThrow();
        assertThat(few.holed()).isCloseTo(0.25, within(1e-9));
        // Three of twelve against two in three: 1.8 in log odds by themselves.
        assertThat(few.logOdds().value()).isBetween(-1.2, -0.05);
        assertThat(few.verdict()).isEqualTo(Finding.Verdict.UNKNOWN);
    }

    private static Weaknesses weaknesses(int putts, long seed, Wider wider) {
        return Weaknesses.of(Tallies.of(Sessions.of(putts(putts, seed, wider))));
    }

    private interface Wider {
        double direction(Shot kind);
    }

    private static List<Shot> putts(int putts, long seed, Wider wider) {
        Random random = new Random(seed);
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < putts; i++) {
            Break breaks = Break.values()[random.nextInt(3)];
            Lie lie = Lie.values()[random.nextInt(3)];
            double distanceMm = 914.4 * (1 + random.nextInt(7));
            Shot kind = Shot.of(0, 0, distanceMm, false).tagged(breaks, lie);
            Golfer golfer = new Golfer(1.5 * wider.direction(kind), 280, 0.09, 0.01);
            shots.add(golfer.putt(random, i / 60, i * 30_000L, distanceMm).tagged(breaks, lie));
        }
        return shots;
    }
}

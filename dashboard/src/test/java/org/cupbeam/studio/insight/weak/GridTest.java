package org.cupbeam.studio.insight.weak;

import static org.assertj.core.api.Assertions.assertThat;

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

class GridTest {
    @Test
    void ofPlayersAlikeInAllKindsOneInTwentySeesAMark() {
        int marked = 0;
        int players = 400;
        for (int player = 0; player < players; player++) {
            marked += grid(new Random(player), 2_000 + 40 * player, 0).cells().stream().anyMatch(GridTest::isMarked) ? 1 : 0;
        }
        System.out.printf("grid: %d of %d players alike in all kinds see a mark; stated 1 in 20%n", marked, players);
        assertThat(marked).isLessThanOrEqualTo((int) (players / 20.0 + 2 * Math.sqrt(players / 20.0)));
        assertThat(marked).as("a mark that is never set is none").isPositive();
    }

    @Test
    void aKindThatIsWeakIsMarkedAndTheOthersAreNot() {
        int found = 0;
        int others = 0;
        for (int seed = 0; seed < 30; seed++) {
            for (Grid.Cell cell : grid(new Random(seed), 20_000, 0.35).cells()) {
                boolean weakKind = cell.breaks() == Trait.LEFT_TO_RIGHT && cell.slope() == Trait.DOWNHILL;
                found += weakKind && cell.distance() == Trait.MIDDLE && cell.verdict() == Finding.Verdict.WEAK ? 1 : 0;
                others += !weakKind && cell.verdict() == Finding.Verdict.WEAK ? 1 : 0;
            }
        }
        assertThat(found).isGreaterThanOrEqualTo(27);
        assertThat(others).isLessThanOrEqualTo(3);
    }

    @Test
    void ofFewPuttsItSaysHowManyMoreWouldTell() {
        Grid grid = grid(new Random(1), 300, 0);
        assertThat(grid.cells()).hasSize(27).allSatisfy(cell -> {
            assertThat(cell.verdict()).isEqualTo(Finding.Verdict.UNKNOWN);
            assertThat(cell.moreNeeded()).isBetween(100, 2_000);
            assertThat(cell.inWords(Units.METRIC)).startsWith("Not yet known: ").endsWith("would tell.");
        });
    }

    @Test
    void withoutAPuttNothingIsKnown() {
        assertThat(Grid.of(Tallies.of(Sessions.of(List.of())), distanceMm -> 0.5).cells()).hasSize(27)
                .allSatisfy(cell -> assertThat(cell.inWords(Units.FEET)).contains("none yet"));
    }

    private static boolean isMarked(Grid.Cell cell) {
        return cell.verdict() == Finding.Verdict.WEAK || cell.verdict() == Finding.Verdict.STRONG;
    }

    /** @param spoilt the share of holed putts left-to-right and downhill that stay out */
    private static Grid grid(Random random, int putts, double spoilt) {
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < putts; i++) {
            Break breaks = Break.values()[random.nextInt(3)];
            Lie lie = Lie.values()[random.nextInt(3)];
            double distanceMm = 914.4 * (1 + random.nextInt(7));
            boolean holed = Golfer.club().roll(random, distanceMm).holed();
            boolean out = breaks == Break.LEFT_TO_RIGHT && lie == Lie.DOWNHILL && random.nextDouble() < spoilt;
            shots.add(Shot.of(i / 60, i * 60_000L, distanceMm, holed && !out).tagged(breaks, lie));
        }
        Tallies tallies = Tallies.of(Sessions.of(shots));
        return Grid.of(tallies, tallies.makesAlone().curve());
    }
}

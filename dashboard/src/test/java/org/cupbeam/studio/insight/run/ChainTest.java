package org.cupbeam.studio.insight.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** C. M. Grinstead and J. L. Snell, Introduction to Probability, chapter 11: the drunkard's walk. */
class ChainTest {
    private static final double EXACT = 1e-9;
    private static final int LONG = 2000;

    /** Examples 11.13 to 11.15, left and right equally likely. */
    @Test
    void theDrunkardsWalkIsTheBooks() {
        expect(walk(0.5), new double[][] {{1.5, 1, 0.5}, {1, 2, 1}, {0.5, 1, 1.5}}, new double[] {3, 4, 3},
                new double[][] {{0.75, 0.25}, {0.5, 0.5}, {0.25, 0.75}});
    }

    /** Exercise 8, right twice as likely as left. */
    @Test
    void theDrunkardWhoLeansToTheRightIsTheBooks() {
        expect(walk(2.0 / 3), new double[][] {{1.4, 1.2, 0.8}, {0.6, 1.8, 1.2}, {0.2, 0.6, 1.4}},
                new double[] {3.4, 3.6, 2.2},
                new double[][] {{7 / 15.0, 8 / 15.0}, {0.2, 0.8}, {1 / 15.0, 14 / 15.0}});
    }

    /** Exercise 11: upward by 1 to 5, each as likely, until 5 is reached or passed; six decimals. */
    @Test
    void theJumpsUpwardTakeAsLongAsTheBookSays() {
        double[][] within = new double[4][4];
        double[][] out = new double[4][1];
        for (int from = 1; from <= 4; from++) {
            for (int to = from + 1; to <= 4; to++) {
                within[from - 1][to - 1] = 1.0 / (5 - from);
            }
            out[from - 1][0] = 1.0 / (5 - from);
        }
        Chain chain = Chain.of(within, out);
        double[] steps = {2.083333, 1.833333, 1.5, 1};
        for (int from = 0; from < 4; from++) {
            assertThat(chain.walk(from, LONG).steps()).isCloseTo(steps[from], within(6e-7));
            assertThat(chain.walk(from, LONG).ended(0)).isCloseTo(1, within(EXACT));
        }
    }

    @Test
    void aWalkThatIsCutShortKeepsWhatIsStillOnTheWay() {
        Chain.Walk walk = walk(0.5).walk(1, 2);
        assertThat(walk.ended(0) + walk.ended(1)).isCloseTo(0.5, within(EXACT));
        assertThat(walk.left()).containsExactly(0, 0.5, 0);
    }

    private static void expect(Chain chain, double[][] visits, double[] steps, double[][] ended) {
        for (int from = 0; from < visits.length; from++) {
            Chain.Walk walk = chain.walk(from, LONG);
            assertThat(walk.visits()).containsExactly(visits[from], within(EXACT));
            assertThat(walk.steps()).isCloseTo(steps[from], within(EXACT));
            assertThat(walk.ended(0)).isCloseTo(ended[from][0], within(EXACT));
            assertThat(walk.ended(1)).isCloseTo(ended[from][1], within(EXACT));
        }
    }

    private static Chain walk(double right) {
        double left = 1 - right;
        return Chain.of(new double[][] {{0, right, 0}, {left, 0, right}, {0, left, 0}},
                new double[][] {{left, 0}, {0, 0}, {0, right}});
    }
}

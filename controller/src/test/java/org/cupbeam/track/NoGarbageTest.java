package org.cupbeam.track;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.Test;

class NoGarbageTest {
    private static final Rig RIG = PracticeRigs.withPedal(PracticeRigs.FULL.level());
    private static final long ROUND_NS = 20_000_000_000L;
    private static final int ROUNDS = 4000;
    private static final long SLACK_BYTES = 16_384;

    private final ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    private final Played played = new Played();
    private final Tracker tracker = new Tracker(RIG, played);
    private long startNs;

    /** Shoes, hands, spikes, balls rolled back, and what first looks like a ball: all but putts. */
    @Test
    void noEdgeAllocatesAnythingWhereNoPuttCame() {
        Tape tape = Tape.of(RIG, noise());
        int[] channel = tape.edges().stream().mapToInt(Tape.Edge::channel).toArray();
        boolean[] active = new boolean[channel.length];
        long[] timeNs = new long[channel.length];
        for (int i = 0; i < channel.length; i++) {
            active[i] = tape.edges().get(i).active();
            timeNs[i] = tape.edges().get(i).timeNs();
        }
        play(channel, active, timeNs, ROUNDS);
        long before = threads.getCurrentThreadAllocatedBytes();

        play(channel, active, timeNs, ROUNDS);

        long bytes = threads.getCurrentThreadAllocatedBytes() - before;
        assertThat(played.attempts).isEmpty();
        assertThat(channel.length * (long) ROUNDS).isGreaterThan(500_000);
        assertThat(bytes).as("for %d edges", channel.length * (long) ROUNDS).isLessThan(SLACK_BYTES);
    }

    private void play(int[] channel, boolean[] active, long[] timeNs, int rounds) {
        for (int round = 0; round < rounds; round++) {
            for (int i = 0; i < channel.length; i++) {
                tracker.edge(channel[i], active[i], startNs + timeNs[i]);
            }
            startNs += ROUND_NS;
        }
    }

    private static Script noise() {
        Script script = new Script(RIG).hand(1, 1).press(2, 0.01).blocks("strike", 2, 2.0001);
        double atS = 3;
        for (Beam beam : RIG.beams()) {
            String name = RIG.channels().get(beam.channel()).name();
            for (int i = 0; i < 10; i++) {
                script.blocks(name, atS + 0.004 * i, atS + 0.004 * i + 0.0003);
            }
            script.blocks(name, 5.5, 6.1);
            script.blocks(name, 8 - beam.positionMm() / 800, 8.05 - beam.positionMm() / 800);
            script.blocks(name, 11 + beam.positionMm() / 300, 11.04 + beam.positionMm() / 300);
            atS += 0.1;
        }
        return script;
    }
}

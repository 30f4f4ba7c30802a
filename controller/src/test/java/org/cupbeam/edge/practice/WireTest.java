package org.cupbeam.edge.practice;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class WireTest {
    private static final long MS = 1_000_000;

    @Test
    void anIdealReceiverSaysWhatBlocksItAtOnce() {
        Wire wire = new Wire(Sensing.ideal(), new Dice(1));
        wire.block(5 * MS, 9 * MS);

        assertThat(turns(wire)).containsExactly(5 * MS, 9 * MS);
    }

    @Test
    void whatBlocksItTwiceAtOnceIsSaidOnce() {
        Wire wire = new Wire(Sensing.ideal(), new Dice(1));
        wire.block(5 * MS, 9 * MS);
        wire.block(7 * MS, 12 * MS);

        assertThat(turns(wire)).containsExactly(5 * MS, 12 * MS);
    }

    @Test
    void aSpikeTurnsTheLineOverForAMomentAndBack() {
        Wire wire = new Wire(Sensing.ideal(), new Dice(1));
        wire.block(5 * MS, 9 * MS);
        wire.spike(6 * MS, 50_000);

        assertThat(turns(wire)).containsExactly(5 * MS, 6 * MS, 6 * MS + 50_000, 9 * MS);
    }

    @Test
    void aReceiverLagsAndChattersWithinItsSlackAndSettles() {
        Sensing poor = new Sensing(0, 300, 50, 30, 1, 1500, 0, 0, Sensing.CupSensor.CURTAIN);
        for (int seed = 0; seed < 200; seed++) {
            Wire wire = new Wire(poor, new Dice(seed));
            wire.block(20 * MS, 80 * MS);
            List<Long> turns = turns(wire);

            assertThat(turns).as("seed %s", seed).hasSizeGreaterThan(2).isSorted();
            assertThat(turns.size() % 2).isZero();
            assertThat(turns).allMatch(at -> Math.abs(at - 20 * MS) < Wire.SLACK_NS
                    || Math.abs(at - 80 * MS) < Wire.SLACK_NS);
        }
    }

    @Test
    void aMutedReceiverSaysNothingUntilItIsHeardAgain() {
        Wire wire = new Wire(Sensing.ideal(), new Dice(1));
        wire.block(5 * MS, 9 * MS);
        wire.block(15 * MS, 30 * MS);
        wire.mute(2 * MS, 20 * MS);

        assertThat(turns(wire)).containsExactly(20 * MS, 30 * MS);
    }

    private static List<Long> turns(Wire wire) {
        wire.advance(Long.MAX_VALUE);
        List<Long> turns = new ArrayList<>();
        while (wire.nextTurnNs() < Long.MAX_VALUE) {
            turns.add(wire.nextTurnNs());
            wire.takeTurn();
        }
        return turns;
    }
}

package org.cupbeam.studio.sim;

import org.junit.jupiter.api.Test;

/** Every attempt is in the store once, in order, and the score is the drill engine's, whatever happens on the way. */
class SimulationTest {
    @Test
    void whateverHappensEveryPuttIsKeptOnceAndTheScoreIsRight() {
        new Seeds(Simulation.Sabotage.NONE).hold(Seeds.first(), Seeds.count(Boolean.getBoolean("cupbeam.nightly") ? 10_000 : 300));
    }
}

package org.cupbeam.studio.sim;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** A simulation that cannot fail proves nothing: each of these faults, put in on purpose, is found within so many seeds. */
class SimulationFailsTest {
    private static final int SEEDS = 60;

    @Test
    void findsALaneThatPublishesBeforeItsDiskHasSynced() {
        isFound(new Simulation.Sabotage(ForgetfulDisk::new, store -> log -> log));
    }

    @Test
    void findsAHostThatSaysStoredBeforeItHasCommitted() {
        isFound(new Simulation.Sabotage(Disk::new, store -> BrokenHosts::commitsLater));
    }

    @Test
    void findsAHostThatKeepsWhatComesAgain() {
        isFound(new Simulation.Sabotage(Disk::new, store -> log -> BrokenHosts.keepsAgain(store, log)));
    }

    @Test
    void playsASeedTheSameWayEachTime() {
        assertThat(trace(7)).isEqualTo(trace(7)).isNotEqualTo(trace(8));
    }

    private static void isFound(Simulation.Sabotage sabotage) {
        assertThat(new Seeds(sabotage).broken(1, SEEDS).map(Seeds.Broken::why)).as("found within %d seeds", SEEDS)
                .get().isInstanceOf(AssertionError.class);
    }

    private static long trace(long seed) {
        try (Simulation simulation = new Simulation(seed, Seeds.folder(), Simulation.Sabotage.NONE)) {
            simulation.run();
            return simulation.agenda.trace();
        }
    }
}

package org.cupbeam.studio.sim;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;

/** Simulations of many seeds, on all the machine's cores. */
final class Seeds {
    private static final Path MEMORY = Path.of("/dev/shm");
    private static final String SEED = "cupbeam.seed";
    private static final String COUNT = "cupbeam.seeds";
    private final Simulation.Sabotage sabotage;

    Seeds(Simulation.Sabotage sabotage) {
        this.sabotage = sabotage;
    }

    /** A seed that does not hold. */
    record Broken(long seed, Throwable why) {
    }

    /** The first seed: the one asked for, or 1. */
    static long first() {
        return Long.getLong(SEED, 1);
    }

    /** How many: one where one was asked for. */
    static int count(int usual) {
        return System.getProperty(SEED) != null && System.getProperty(COUNT) == null ? 1
                : Integer.getInteger(COUNT, usual);
    }

    /** An error that says how to see it again, for the lowest of those that do not hold. */
    void hold(long first, int count) {
        List<Broken> broken = LongStream.range(first, first + count).parallel().mapToObj(this::play)
                .flatMap(Optional::stream).toList();
        if (!broken.isEmpty()) {
            Broken one = broken.get(0);
            throw new AssertionError("seed " + one.seed() + ": " + one.why().getMessage()
                    + "\nagain: mvn -q -pl dashboard -am test -Dsurefire.failIfNoSpecifiedTests=false "
                    + "-Dtest=SimulationTest -D" + SEED + "=" + one.seed() + "\n" + broken.size() + " of " + count
                    + " seeds do not hold: " + broken.stream().map(Broken::seed).limit(20).toList(), one.why());
        }
    }

    /** The first that does not hold. */
    Optional<Broken> broken(long first, int count) {
        return LongStream.range(first, first + count).mapToObj(this::play).flatMap(Optional::stream).findFirst();
    }

    private Optional<Broken> play(long seed) {
        try (Simulation simulation = new Simulation(seed, folder(), sabotage)) {
            simulation.run();
            return Optional.empty();
        } catch (Throwable e) {
            return Optional.of(new Broken(seed, e));
        }
    }

    /** In memory where the system has such a place: what a disk would lose is simulated, and its slowness teaches nothing. */
    static Path folder() {
        return Files.isWritable(MEMORY) ? MEMORY : Path.of(System.getProperty("java.io.tmpdir"));
    }
}

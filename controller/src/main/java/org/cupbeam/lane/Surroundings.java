package org.cupbeam.lane;

import java.time.InstantSource;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;

/**
 * What a lane knows of the world but for its edges.
 *
 * @param nanoTime     the monotonic clock of the edges, ns
 * @param pace         how many times as fast as the machine's own that clock runs: 1 but for a simulated green
 * @param wall         the wall clock, which may be wrong, and jump
 * @param synchronised whether the wall clock can be believed
 * @param boot         the id of this start of the machine
 * @param version      the program's
 */
public record Surroundings(LongSupplier nanoTime, double pace, InstantSource wall, BooleanSupplier synchronised,
                           String boot, String version) {

    /** The machine's own. */
    public static Surroundings ofThisMachine(String version) {
        Machine machine = Machine.own();
        return new Surroundings(System::nanoTime, 1, InstantSource.system(), machine::clockIsBelieved, machine.boot(),
                version);
    }

    /** The same, but for the time of a simulated green. */
    public Surroundings at(LongSupplier otherNanoTime, double otherPace) {
        return new Surroundings(otherNanoTime, otherPace, wall, synchronised, boot, version);
    }
}

package org.cupbeam.fuzz;

import java.util.List;

/** Something that takes input from outside. */
public interface Target {
    /** What it accepted a thing with. */
    String ACCEPTED = "";

    /** Names it in messages, and the folder of inputs that were once faults. */
    String name();

    /** Good inputs, to be spoiled. */
    List<byte[]> seeds();

    /** Words that mean something to it. */
    List<String> words();

    /** The longest input to give it, in bytes. */
    default int longest() {
        return 64 * 1024;
    }

    /** The most that one input may have it allocate, in bytes: far less than the memory of a board. */
    default long mostBytes() {
        return 32L << 20;
    }

    /** The longest that one input may keep a processor, in ms. */
    default long mostMs() {
        return 2_000;
    }

    /**
     * Takes an input.
     *
     * @return {@link #ACCEPTED}, or the reason why not
     * @throws Throwable whatever escapes is a fault
     */
    String take(byte[] input) throws Throwable;
}

package org.cupbeam.edge.board;

/**
 * One GPIO line, asked for with both edges. For one thread, but for {@link #hasEdge}; any method may throw where the line
 * has gone.
 */
interface LinePort extends AutoCloseable {
    /** Its level now. */
    boolean isHigh();

    /** Waits for an edge to be there to read; false after {@code timeoutNs} without one. */
    boolean await(long timeoutNs);

    /** Whether an edge is there to read, without waiting. Any thread, as long as it is not closed meanwhile. */
    boolean hasEdge();

    /** Takes the oldest edge, which {@link #rising} and {@link #timeNs} then tell of. */
    void read();

    /** Whether the edge taken was from low to high. */
    boolean rising();

    /** The kernel's stamp of the edge taken, ns on its monotonic clock. */
    long timeNs();

    /** Gives the line back. */
    @Override
    void close();
}

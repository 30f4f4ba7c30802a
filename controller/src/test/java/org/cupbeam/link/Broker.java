package org.cupbeam.link;

/** A real broker of a test's own, on loopback; it keeps nothing when it is stopped. */
interface Broker extends AutoCloseable {
    String uri();

    /** Starts it, at the same address each time, and returns when it listens. */
    void start() throws Exception;

    /** Ends it without warning. */
    void kill() throws Exception;

    @Override
    default void close() throws Exception {
        kill();
    }
}

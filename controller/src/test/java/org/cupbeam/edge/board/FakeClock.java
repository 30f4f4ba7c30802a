package org.cupbeam.edge.board;

import java.util.function.LongSupplier;

/** A clock that a test moves. */
final class FakeClock implements LongSupplier {
    long nowNs = 5_000_000_000L;

    @Override
    public long getAsLong() {
        return nowNs;
    }
}

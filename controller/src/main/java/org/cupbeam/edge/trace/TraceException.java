package org.cupbeam.edge.trace;

import java.io.IOException;

/** A trace that makes no sense. The message names it, the line, the reason, and what would do. */
public final class TraceException extends IOException {
    private final long line;

    TraceException(String trace, long line, String reason) {
        super(trace + ":" + line + ": " + reason);
        this.line = line;
    }

    /** The line it was found in, from 1. */
    public long line() {
        return line;
    }
}

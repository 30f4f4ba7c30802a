package org.cupbeam.cli;

import java.io.IOException;
import org.cupbeam.edge.EdgeSource;
import org.cupbeam.edge.trace.VcdWriter;

/** Edges on their way into a trace; however it ends, what had come is there whole. */
final class Recording {
    private final EdgeSource source;
    private final VcdWriter trace;

    Recording(EdgeSource source, VcdWriter trace) {
        this.source = source;
        this.trace = trace;
    }

    void start() {
        source.start(trace);
    }

    void close() {
        source.close();
        try {
            trace.close();
        } catch (IOException e) {
            System.err.println("cupbeam: " + e.getMessage());
        }
    }
}

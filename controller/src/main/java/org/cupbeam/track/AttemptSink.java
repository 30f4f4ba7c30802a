package org.cupbeam.track;

/** Whoever takes resolved attempts, in the order in which they are resolved. */
@FunctionalInterface
public interface AttemptSink {
    void attempt(Attempt attempt);
}

package org.cupbeam.studio.ingest;

import java.time.Instant;
import java.util.List;
import org.cupbeam.event.Source;

/**
 * What is to be committed in one transaction, all of it or nothing.
 *
 * @param arrivals    events, those of one source in order and without a hole that is not among {@code missing}
 * @param missing     numbers that a lane could not send any more
 * @param deadLetters messages that were none
 */
public record Batch(List<Arrival> arrivals, List<Missing> missing, List<DeadLetter> deadLetters) {
    /** Numbers of a source that never came, both ends included. */
    public record Missing(Source source, long from, long to, Instant noted) {
    }

    /** A message that made no sense. */
    public record DeadLetter(String topic, String reason, byte[] payload, Instant received) {
    }

    public Batch {
        arrivals = List.copyOf(arrivals);
        missing = List.copyOf(missing);
        deadLetters = List.copyOf(deadLetters);
    }

    public boolean isEmpty() {
        return arrivals.isEmpty() && missing.isEmpty() && deadLetters.isEmpty();
    }
}

package org.cupbeam.studio.ingest;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** A log in memory that can be made to fail. */
final class FakeLog implements EventLog {
    final List<Batch> batches = new ArrayList<>();
    final List<Kept> before = new ArrayList<>();
    Predicate<Batch> failing = batch -> false;

    @Override
    public List<Kept> kept() {
        return before;
    }

    @Override
    public synchronized void commit(Batch batch) {
        if (failing.test(batch)) {
            throw new IllegalStateException("cannot keep that");
        }
        batches.add(batch);
    }

    synchronized List<Arrival> arrivals() {
        return batches.stream().flatMap(batch -> batch.arrivals().stream()).toList();
    }

    synchronized List<Batch.DeadLetter> deadLetters() {
        return batches.stream().flatMap(batch -> batch.deadLetters().stream()).toList();
    }
}

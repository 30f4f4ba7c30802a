package org.cupbeam.studio.ingest;

/** The host's own ingest, without its threads: whoever holds it takes their steps. */
public final class IngestByHand {
    private final Ingest ingest;

    public IngestByHand(Ingest ingest) {
        this.ingest = ingest;
    }

    /** One step of the thread that holds the connection. @return how long to wait before the next, ms */
    public long feed() {
        try {
            return ingest.feed().step(0);
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
    }

    /** One step of the thread that keeps events. @return whether there was something to do */
    public boolean intake() {
        try {
            return ingest.intake().step(0);
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
    }

    /** One step of the thread that hands news on. @return whether there was something to do */
    public boolean news() {
        try {
            return ingest.news().step(0);
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
    }
}

package org.cupbeam.studio.ingest;

/** Another host keeps the events by now; nothing of what was to be kept here was. */
public final class NotOurTurn extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public NotOurTurn(String message) {
        super(message);
    }
}

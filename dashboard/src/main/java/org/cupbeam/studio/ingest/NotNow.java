package org.cupbeam.studio.ingest;

/** The log can keep nothing at present, whatever it is given: a full disk, say. Nothing of what was to be kept was. */
public final class NotNow extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** @param message what is wrong and what would do */
    public NotNow(String message, Throwable cause) {
        super(message, cause);
    }
}

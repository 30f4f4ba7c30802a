package org.cupbeam.studio.store.sheet;

/** A row or a file that makes no sense: where, what is wrong, and what would do. */
public final class BadRow extends Exception {
    private static final long serialVersionUID = 1L;

    public BadRow(String message) {
        super(message);
    }
}

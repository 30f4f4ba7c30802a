package org.cupbeam.studio.store;

/** The store cannot be opened, or not be written to: says which one, what is wrong, and what would do. */
public final class StoreTrouble extends RuntimeException {
    private static final long serialVersionUID = 1L;

    StoreTrouble(String message, Throwable cause) {
        super(message, cause);
    }
}

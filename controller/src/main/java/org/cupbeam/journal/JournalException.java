package org.cupbeam.journal;

/** A journal that cannot do what was asked: which file, what is wrong, what would do. Nothing was half done. */
public final class JournalException extends Exception {
    private static final long serialVersionUID = 1L;

    private final Kind kind;

    JournalException(Kind kind, String message, Throwable cause) {
        super(message, cause);
        this.kind = kind;
    }

    public Kind kind() {
        return kind;
    }

    /** What sort of trouble. */
    public enum Kind {
        /** Somebody else has it open. */
        IN_USE,
        /** A later version of the program wrote it. */
        NEWER,
        /** It is another program's file. */
        FOREIGN,
        /** The disk is full. */
        FULL,
        /** It, or its folder, cannot be written. */
        READ_ONLY,
        /** It no longer reads as it was written. */
        DAMAGED,
        /** The disk, or the program, failed otherwise. */
        FAILED
    }
}

package org.cupbeam.event;

import org.cupbeam.rig.file.Shown;

/** A message that makes no sense: where in it, what is wrong, and what would do, fit for an answer, a log or a page. */
public final class BadMessage extends Exception {
    private static final long serialVersionUID = 1L;

    private static final int WHERE_MAX = 100;
    private static final int WHAT_MAX = 200;

    private final String where;
    private final String id;

    BadMessage(String where, String what, String remedy) {
        this(Shown.of(where, WHERE_MAX), null,
                Shown.of(where, WHERE_MAX) + ": " + Shown.of(what, WHAT_MAX) + "; " + Shown.of(remedy, WHAT_MAX), null);
    }

    private BadMessage(String where, String id, String message, Throwable cause) {
        super(message, cause);
        this.where = where;
        this.id = id;
    }

    /** The same, of a message whose id could be read. */
    BadMessage withId(String readId) {
        return new BadMessage(where, readId, getMessage(), this);
    }

    /** The path to the culprit, as {@code data.attempt.finish_mm}. */
    public String where() {
        return where;
    }

    /** The message's own id where it could be read, so that an answer can be given; else null. */
    public String id() {
        return id;
    }
}

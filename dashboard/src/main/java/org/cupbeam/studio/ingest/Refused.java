package org.cupbeam.studio.ingest;

/** A message that is no event of ours, with the reason; to be set aside, since nobody will mend it by sending it again. */
final class Refused extends Exception {
    private static final long serialVersionUID = 1L;

    Refused(String reason) {
        super(reason);
    }
}

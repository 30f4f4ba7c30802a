package org.cupbeam.studio;

/** Why nothing was started, and what would do, in words for whoever typed the command. */
final class CannotStart extends Exception {
    private static final long serialVersionUID = 1L;

    CannotStart(String whatAndRemedy, Throwable cause) {
        super(whatAndRemedy, cause);
    }

    CannotStart(String what, String remedy, Throwable cause) {
        super(what + "; " + remedy, cause);
    }
}

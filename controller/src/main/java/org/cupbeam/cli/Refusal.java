package org.cupbeam.cli;

/** What was asked for makes no sense; the message says where, what, and what would do. Exit status 2. */
final class Refusal extends Exception {
    private static final long serialVersionUID = 1;

    Refusal(String message) {
        super(message);
    }

    Refusal(Exception cause) {
        super(cause.getMessage(), cause);
    }
}

package org.cupbeam.edge.board;

/** There is no board here whose pins can be read. The message says why, and what would do. */
public final class BoardException extends Exception {
    BoardException(String message, Throwable cause) {
        super(message, cause);
    }
}

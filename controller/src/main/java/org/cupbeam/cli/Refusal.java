package org.cupbeam.cli;

import java.nio.file.Files;
import java.nio.file.Path;

/** What was asked for makes no sense; the message says where, what, and what would do. Exit status 2. */
final class Refusal extends Exception {
    private static final long serialVersionUID = 1;

    Refusal(String message) {
        super(message);
    }

    Refusal(Exception cause) {
        super(cause.getMessage(), cause);
    }

    /** For what is to be read, or written over: a folder is neither. */
    static void ofFolder(Path file, String wanted) throws Refusal {
        if (Files.isDirectory(file)) {
            throw new Refusal(file + ": is a folder; name " + wanted + " in it");
        }
    }
}

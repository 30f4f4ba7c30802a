package org.cupbeam.rig.file;

import java.util.List;
import java.util.stream.Collectors;

/** A file that cannot be used, with everything that is wrong in it. The message is meant for its author. */
public final class BadFileException extends Exception {
    private final transient List<Problem> problems;

    BadFileException(List<Problem> problems) {
        super(problems.stream().map(Problem::toString).collect(Collectors.joining(System.lineSeparator())));
        this.problems = List.copyOf(problems);
    }

    /** All that was found, in order of line; at least one. */
    public List<Problem> problems() {
        return problems;
    }
}

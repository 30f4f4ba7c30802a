package org.cupbeam.rig.file;

import java.util.List;
import java.util.stream.Collectors;

/** A file that cannot be used, with what is wrong in it. The message is meant for its author. */
public final class BadFileException extends Exception {
    private final transient List<Problem> problems;

    BadFileException(List<Problem> problems) {
        super(problems.stream().map(Problem::toString).collect(Collectors.joining(System.lineSeparator())));
        this.problems = List.copyOf(problems);
    }

    /** What was found, in order of line, and last how much more there is: one at least, and no more than anybody reads in one go. */
    public List<Problem> problems() {
        return problems;
    }
}

package org.cupbeam.rig.file;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A file that cannot be used, with what is wrong in it. The message is meant for its author. */
public final class BadFileException extends Exception {
    private final transient List<Problem> problems;

    /** @param more that were found and are only counted */
    BadFileException(List<Problem> problems, int more) {
        super(Stream.concat(problems.stream().map(Problem::toString), more == 0 ? Stream.empty() : Stream.of("and " + more + " more"))
                .collect(Collectors.joining(System.lineSeparator())));
        this.problems = List.copyOf(problems);
    }

    /** What was found, in order of line: one at least, and no more than anybody reads in one go. */
    public List<Problem> problems() {
        return problems;
    }
}

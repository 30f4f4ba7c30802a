package org.cupbeam.rig;

import java.util.List;
import java.util.stream.Collectors;

/** A rig file that cannot be used, with everything that is wrong in it. The message is meant for its author. */
public final class RigFileException extends Exception {
    private final transient List<Problem> problems;

    RigFileException(List<Problem> problems) {
        super(problems.stream().map(Problem::toString).collect(Collectors.joining(System.lineSeparator())));
        this.problems = List.copyOf(problems);
    }

    /** All that was found, in order of line; at least one. */
    public List<Problem> problems() {
        return problems;
    }

    /**
     * One thing that is wrong.
     *
     * @param file   the file as it was named
     * @param line   from 1; 0 where it is the whole file
     * @param key    dotted, as {@code beam.gpio}; empty where no key is concerned
     * @param wrong  what is wrong
     * @param remedy what would do; empty where the first says it
     */
    public record Problem(String file, int line, String key, String wrong, String remedy) {
        @Override
        public String toString() {
            return file + (line > 0 ? ":" + line : "") + ": " + (key.isEmpty() ? "" : key + ": ") + wrong
                    + (remedy.isEmpty() ? "" : "; " + remedy);
        }
    }
}

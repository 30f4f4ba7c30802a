package org.cupbeam.rig.file;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Gathers what is wrong in one file, so that its author hears all of it at once. */
final class Problems {
    private static final int REPORTED_MAX = 20;
    private static final int KEY_MAX = 80;
    private static final int WRONG_MAX = 240;

    private final String file;
    private final List<Problem> found = new ArrayList<>();

    Problems(String file) {
        this.file = file;
    }

    void add(int line, String key, String wrong, String remedy) {
        found.add(new Problem(file, line, Shown.of(key, KEY_MAX), Shown.of(wrong, WRONG_MAX), remedy));
    }

    void throwIfAny() throws BadFileException {
        if (!found.isEmpty()) {
            List<Problem> told = new ArrayList<>(found.stream().sorted(Comparator.comparingInt(Problem::line)).limit(REPORTED_MAX).toList());
            if (found.size() > REPORTED_MAX) {
                told.add(new Problem(file, 0, "", "and " + (found.size() - REPORTED_MAX) + " more, listed when these are mended", ""));
            }
            throw new BadFileException(told);
        }
    }

    /** For what leaves nothing to look at. */
    static BadFileException wholeFile(String file, String wrong, String remedy) {
        return new BadFileException(List.of(new Problem(file, 0, "", wrong, remedy)));
    }
}

package org.cupbeam.rig;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.cupbeam.rig.RigFileException.Problem;

/** Gathers what is wrong in one file, so that its author hears all of it at once. */
final class Problems {
    private static final int REPORTED_MAX = 20;

    private final String file;
    private final List<Problem> found = new ArrayList<>();

    Problems(String file) {
        this.file = file;
    }

    void add(int line, String key, String wrong, String remedy) {
        found.add(new Problem(file, line, key, wrong, remedy));
    }

    void throwIfAny() throws RigFileException {
        if (!found.isEmpty()) {
            throw new RigFileException(found.stream()
                    .sorted(Comparator.comparingInt(Problem::line)).limit(REPORTED_MAX).toList());
        }
    }

    /** For what leaves nothing to look at. */
    static RigFileException wholeFile(String file, String wrong, String remedy) {
        return new RigFileException(List.of(new Problem(file, 0, "", wrong, remedy)));
    }
}

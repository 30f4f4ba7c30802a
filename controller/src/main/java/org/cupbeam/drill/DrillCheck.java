package org.cupbeam.drill;

import java.util.List;
import org.cupbeam.rig.file.BadFileException;

/** What a text says as a drill file, for whoever is writing it: the drill, or all that is wrong. */
public sealed interface DrillCheck {
    /** It is a drill. */
    record Fine(Drill drill) implements DrillCheck {
    }

    /** It is none yet. */
    record Faulty(List<Fault> faults) implements DrillCheck {
        public Faulty {
            faults = List.copyOf(faults);
        }
    }

    /**
     * One thing that is wrong.
     *
     * @param line   from 1; 0 where it is the whole text
     * @param key    dotted, as {@code balls.count}; empty where no key is concerned
     * @param remedy what would do; empty where the first says it
     */
    record Fault(int line, String key, String wrong, String remedy) {
    }

    /** Reads a text as a drill file. */
    static DrillCheck of(String text) {
        try {
            return new Fine(DrillFile.parse("drill", text));
        } catch (BadFileException e) {
            return new Faulty(e.problems().stream()
                    .map(each -> new Fault(each.line(), each.key(), each.wrong(), each.remedy())).toList());
        }
    }
}

package org.cupbeam.rig;

import java.nio.file.Path;
import org.cupbeam.rig.file.BadFileException;
import org.cupbeam.rig.file.TomlText;

/**
 * Reads a rig file: TOML, in UTF-8.
 *
 * <p>A wire that says nothing of its polarity is active high, and one that says nothing of its resistor is pulled up:
 * harmless beside an external resistor, right for an open collector, and a sensor that has come off then reads as
 * blocked for good, which is noticed, and not as clear for good, which is not.
 */
public final class RigFile {
    private static final String KIND = "a rig file";

    private RigFile() {
    }

    /**
     * Reads and checks a rig file.
     *
     * @throws BadFileException with every problem found, each with file, line, key, what is wrong and what would do
     */
    public static Rig read(Path file) throws BadFileException {
        return new RigReading(TomlText.read(KIND, file).parsed()).rig();
    }

    /** Reads a rig from text; {@code file} names it in errors. */
    public static Rig parse(String file, String text) throws BadFileException {
        return new RigReading(new TomlText(KIND, file, text).parsed()).rig();
    }
}

package org.cupbeam.drill;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.cupbeam.rig.file.BadFileException;
import org.cupbeam.rig.file.TomlText;

/** Drills as files: TOML, in UTF-8. */
public final class DrillFile {
    private static final String KIND = "a drill file";

    private DrillFile() {
    }

    /**
     * Reads and checks a drill file.
     *
     * @throws BadFileException with every problem found, each with file, line, key, what is wrong and what would do
     */
    public static Drill read(Path file) throws BadFileException {
        return DrillReading.drill(TomlText.read(KIND, file).parsed());
    }

    /** Reads a drill from text; {@code file} names it in errors. */
    public static Drill parse(String file, String text) throws BadFileException {
        return DrillReading.drill(new TomlText(KIND, file, text).parsed());
    }

    /** The text of a file that reads as this drill. */
    public static String text(Drill drill) {
        return DrillWriting.text(drill);
    }

    /** The drills that come with the product, by the names to ask for them. */
    public static List<String> presets() {
        return List.of("ladder", "one-ball", "lag", "mixed-nine");
    }

    /** A preset's text, comments included, to start a drill of one's own from. */
    public static String presetText(String preset) {
        try (InputStream in = DrillFile.class.getResourceAsStream(preset + ".toml")) {
            if (in == null || !presets().contains(preset)) {
                throw new IllegalArgumentException("no preset " + preset + "; there are " + presets());
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new IllegalStateException("the product's own drill " + preset + " cannot be read", unreadable);
        }
    }

    /** A preset. */
    public static Drill preset(String preset) {
        try {
            return parse(preset + ".toml", presetText(preset));
        } catch (BadFileException broken) {
            throw new IllegalStateException("the product's own drill " + preset + " is broken", broken);
        }
    }
}

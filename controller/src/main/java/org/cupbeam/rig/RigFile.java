package org.cupbeam.rig;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.tomlj.Toml;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseResult;

/**
 * Reads a rig file: TOML, in UTF-8.
 *
 * <p>A wire that says nothing of its polarity is active high, and one that says nothing of its resistor is pulled up:
 * harmless beside an external resistor, right for an open collector, and a sensor that has come off then reads as
 * blocked for good, which is noticed, and not as clear for good, which is not.
 */
public final class RigFile {
    /** A rig of every pin a board has takes a tenth of it. */
    private static final int BYTES_MAX = 64 * 1024;

    private RigFile() {
    }

    /**
     * Reads and checks a rig file.
     *
     * @throws RigFileException with every problem found, each with file, line, key, what is wrong and what would do
     */
    public static Rig read(Path file) throws RigFileException {
        return parse(file.toString(), text(file));
    }

    /** Reads a rig from text; {@code file} names it in errors. */
    public static Rig parse(String file, String text) throws RigFileException {
        TomlParseResult toml;
        try {
            toml = Toml.parse(text);
        } catch (StackOverflowError tooDeep) {
            // The grammar recurses; a file this small gets there only by thousands of brackets.
            throw Problems.wholeFile(file, "lists or tables are nested too deeply", "a rig file needs no nested list");
        }
        Problems problems = new Problems(file);
        for (TomlParseError error : toml.errors()) {
            problems.add(error.position().line(), "", "not TOML: " + error.getMessage(), "");
        }
        problems.throwIfAny();
        return new RigReading(new RigTable("", 1, toml, problems), problems).rig();
    }

    private static String text(Path file) throws RigFileException {
        String name = file.toString();
        try {
            if (Files.isDirectory(file)) {
                throw Problems.wholeFile(name, "is a folder", "name the rig file in it");
            }
            byte[] bytes;
            try (var in = Files.newInputStream(file)) {
                bytes = in.readNBytes(BYTES_MAX + 1);
            }
            if (bytes.length > BYTES_MAX) {
                throw Problems.wholeFile(name, "is longer than " + BYTES_MAX / 1024 + " KiB", "is it a rig file?");
            }
            return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
        } catch (NoSuchFileException missing) {
            throw Problems.wholeFile(name, "no such file", "name the file that says what is fitted to the lane");
        } catch (CharacterCodingException notText) {
            throw Problems.wholeFile(name, "is not text in UTF-8", "save it as UTF-8");
        } catch (IOException unreadable) {
            throw Problems.wholeFile(name, "cannot be read (" + unreadable.getMessage() + ")", "see its permissions");
        }
    }
}

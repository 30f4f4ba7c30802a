package org.cupbeam.rig.file;

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
 * The text of a file that a person wrote.
 *
 * @param kind what sort of file it should be, with its article, such as {@code a rig file}
 * @param file how errors name it
 * @param text as read
 */
public record TomlText(String kind, String file, String text) {
    /** More than anybody writes by hand. Of twice as much rubbish the library makes more errors than a lane's heap holds. */
    private static final int BYTES_MAX = 32 * 1024;
    /** Some editors put it in front; TOML has no place for it. */
    private static final String BYTE_ORDER_MARK = "\uFEFF";

    /**
     * Reads a file: text in UTF-8, of up to 32 KiB.
     *
     * @throws BadFileException where there is none, or it is something else
     */
    public static TomlText read(String kind, Path path) throws BadFileException {
        String file = path.toString();
        try {
            if (Files.isDirectory(path)) {
                throw Problems.wholeFile(file, "is a folder", "name " + kind + " in it");
            }
            byte[] bytes;
            try (var in = Files.newInputStream(path)) {
                bytes = in.readNBytes(BYTES_MAX + 1);
            }
            if (bytes.length > BYTES_MAX) {
                throw Problems.wholeFile(file, "is longer than " + BYTES_MAX / 1024 + " KiB", "is it " + kind + "?");
            }
            String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
            return new TomlText(kind, file, text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text);
        } catch (NoSuchFileException missing) {
            throw Problems.wholeFile(file, "no such file", "name " + kind);
        } catch (CharacterCodingException notText) {
            throw Problems.wholeFile(file, "is not text in UTF-8", "save it as UTF-8");
        } catch (IOException unreadable) {
            throw Problems.wholeFile(file, "cannot be read (" + unreadable.getMessage() + ")", "see its permissions");
        }
    }

    /**
     * Its keys, outermost.
     *
     * @throws BadFileException where it is not TOML
     */
    public Section parsed() throws BadFileException {
        TomlParseResult toml;
        try {
            toml = Toml.parse(text);
        } catch (StackOverflowError tooDeep) {
            // The grammar recurses; a file this small gets there only by thousands of brackets.
            throw Problems.wholeFile(file, "lists or tables are nested too deeply", kind + " needs no list in a list");
        } catch (TomlParseError wrong) { // which the library throws of some places, and collects of the others
            throw notToml(wrong);
        } catch (RuntimeException | AssertionError ofTheLibrary) {
            throw Problems.wholeFile(file, "is not TOML, in a way that its reader has no words for",
                    "see that each backslash and quote is where it belongs");
        }
        Problems problems = new Problems(file);
        toml.errors().forEach(error -> add(problems, error));
        problems.throwIfAny();
        return new Section(kind, "", 1, toml, problems);
    }

    private BadFileException notToml(TomlParseError error) throws BadFileException {
        Problems problems = new Problems(file);
        add(problems, error);
        problems.throwIfAny();
        throw error;
    }

    private static void add(Problems problems, TomlParseError error) {
        String wrong = String.valueOf(error.getMessage());
        problems.add(error.position().line(), "", "not TOML: " + wrong,
                wrong.contains("previously defined") ? "one of the two would do" : "");
    }
}

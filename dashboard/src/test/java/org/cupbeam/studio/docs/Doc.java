package org.cupbeam.studio.docs;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A document of the project's, and the commands in it: the lines of blocks fenced as {@code sh}, and those of indented blocks
 * that begin with a program. A block stands for itself, or for {@code <!-- not run here: REASON -->} before it.
 *
 * @param name from the project's root
 */
record Doc(String name, String text) {
    static final Path ROOT = Path.of("..");
    private static final Pattern PROGRAM = Pattern.compile("(?:java|mvn|sudo|cupbeam|curl|cp|sh|openssl|install|chmod|tar|mosquitto\\w*"
            + "|systemctl|journalctl|apt|apt-get|sqlite3|nginx|chrt) \\S.*");
    private static final Pattern REASON = Pattern.compile("\\s*<!-- not run here: (.*) -->\\s*");
    private static final int INDENT = 4;

    /** @param reason why it is not run here; null where it is */
    record Command(int line, String words, String reason) {
    }

    static List<Doc> all() {
        try (Stream<Path> found = Stream.of(ROOT, ROOT.resolve("docs"), ROOT.resolve("hardware-notes")).flatMap(Doc::pages)) {
            return found.sorted().map(Doc::read).toList();
        }
    }

    static Doc named(String name) {
        return read(ROOT.resolve(name));
    }

    private static Stream<Path> pages(Path folder) {
        try {
            return Files.walk(folder, folder.equals(ROOT) ? 1 : 3).filter(each -> each.toString().endsWith(".md"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Doc read(Path file) {
        try {
            return new Doc(ROOT.relativize(file).toString(), Files.readString(file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** In the order in which they stand. */
    List<Command> commands() {
        List<Command> found = new ArrayList<>();
        String fence = null;
        String reason = null;
        StringBuilder begun = new StringBuilder();
        List<String> lines = text.lines().toList();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i).strip();
            Matcher given = REASON.matcher(line);
            if (given.matches()) {
                reason = given.group(1);
            } else if (line.startsWith("```")) {
                reason = fence == null ? reason : null;
                fence = fence == null ? line.substring(3) : null;
            } else if (fence != null ? fence.equals("sh") : lines.get(i).startsWith(" ".repeat(INDENT))) {
                String words = line.replaceAll("\\s+#.*", "");
                if (begun.length() > 0 || (fence != null ? !words.isEmpty() && !words.startsWith("#") : PROGRAM.matcher(words).matches())) {
                    begun.append(words.endsWith("\\") ? words.substring(0, words.length() - 1) : words);
                    if (!words.endsWith("\\")) {
                        found.add(new Command(i + 1, begun.toString().replaceAll("  +", " "), reason));
                        begun.setLength(0);
                    }
                }
            } else if (!line.isEmpty()) {
                reason = null;
            }
        }
        return found;
    }

    /** What stands between backquotes on a line. */
    Stream<String> quoted() {
        return Pattern.compile("`([^`\n]+)`").matcher(text).results().map(each -> each.group(1));
    }

    @Override
    public String toString() {
        return name;
    }
}

package org.cupbeam;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A table in the notes whose figures the product computes: a test checks that it says what is computed now, and with
 * {@code -Dcupbeam.tables=write} writes it anew. It stands between two comments, {@code <!-- table NAME -->} and
 * {@code <!-- end NAME -->}.
 */
public final class DocTable {
    private static final boolean WRITES = "write".equals(System.getProperty("cupbeam.tables"));
    private static final double LONG_MM = 10;

    private DocTable() {
    }

    /** A file of the project's, from its root. */
    public static Path project(String path) {
        return Path.of("..").resolve(path);
    }

    /** Checks a table, or writes it. */
    public static void says(String file, String name, List<String> lines) throws IOException {
        Path path = project(file);
        String text = Files.readString(path);
        Matcher there = Pattern.compile("(<!-- table " + name + " -->\n\n)(.*?)(\n\n<!-- end " + name + " -->)",
                Pattern.DOTALL).matcher(text);
        assertThat(there.find()).as("%s has a place for table %s", file, name).isTrue();
        String now = String.join("\n", lines);
        if (WRITES) {
            Files.writeString(path, text.substring(0, there.end(1)) + now + text.substring(there.start(3)));
        } else {
            assertThat(there.group(2)).as("table %s in %s; -Dcupbeam.tables=write writes it anew", name, file)
                    .isEqualTo(now);
        }
    }

    /** A row of a table. */
    public static String row(List<String> cells) {
        return "| " + String.join(" | ", cells) + " |";
    }

    /** A length, with a decimal where it is short. */
    public static String mm(double length) {
        return String.format(Locale.ROOT, Math.abs(length) < LONG_MM ? "%.1f" : "%.0f", length);
    }
}

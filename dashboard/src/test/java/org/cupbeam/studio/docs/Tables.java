package org.cupbeam.studio.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What in the docs follows from something else, held to it; {@code -Dcupbeam.tables=write} writes it anew. */
public final class Tables {
    private static final boolean WRITES = "write".equals(System.getProperty("cupbeam.tables"));

    private Tables() {
    }

    /** The table between {@code <!-- table NAME -->} and {@code <!-- end NAME -->} of a page. */
    public static void holds(Path page, String name, List<String> lines) throws IOException {
        String text = Files.readString(page);
        Matcher there = Pattern.compile("(?s)(<!-- table " + name + " -->\n\n)(.*?)(\n\n<!-- end " + name + " -->)").matcher(text);
        assertThat(there.find()).as("a place for the table " + name + " in " + page).isTrue();
        String now = String.join("\n", lines);
        if (WRITES) {
            Files.writeString(page, text.substring(0, there.end(1)) + now + text.substring(there.start(3)));
        } else {
            assertThat(there.group(2)).as("table %s in %s; -Dcupbeam.tables=write writes it anew", name, page).isEqualTo(now);
        }
    }

    /** A file that is written whole. */
    public static void holds(Path file, String text) throws IOException {
        if (WRITES) {
            Files.writeString(file, text);
        } else {
            assertThat(file).hasContent(text);
        }
    }
}

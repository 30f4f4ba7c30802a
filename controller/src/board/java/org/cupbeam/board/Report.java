package org.cupbeam.board;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Locale;

/** What was measured, for people. */
record Report(Path file) {
    void line(String format, Object... values) throws IOException {
        String line = String.format(Locale.ROOT, format, values);
        System.out.println("board: " + line);
        Files.write(file, List.of(line), StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    }
}

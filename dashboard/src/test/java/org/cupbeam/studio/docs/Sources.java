package org.cupbeam.studio.docs;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** The project's sources, as text. */
final class Sources {
    private Sources() {
    }

    /** Files below folders of the project's, by the ends of their names. */
    static List<Path> files(List<String> folders, String... ends) {
        return folders.stream().flatMap(folder -> below(Doc.ROOT.resolve(folder)))
                .filter(file -> Stream.of(ends).anyMatch(file.toString()::endsWith)).toList();
    }

    /** All of the product's own text: what it may say is in here. Literals that are put together in the source are one. */
    static String product() {
        StringBuilder all = new StringBuilder();
        for (Path file : files(List.of("controller/src/main", "dashboard/src/main", "dashboard/src/deb"),
                ".java", ".js", ".html", ".options", ".service", "inst", "rm", "bin/cupbeam")) {
            all.append(read(file).replaceAll("\"\\s*\\+\\s*\"", "")).append('\n');
        }
        return all.toString();
    }

    /** Whether there is a class of this name, in whatever module and folder. */
    static boolean hasClass(String name) {
        return files(List.of("controller/src", "dashboard/src"), "/" + name + ".java").size() > 0;
    }

    static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Stream<Path> below(Path folder) {
        try (Stream<Path> found = Files.walk(folder)) {
            return found.filter(Files::isRegularFile).toList().stream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

package org.cupbeam.studio.insight.make;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.cupbeam.studio.insight.words.Units;

/**
 * Two tables of putts by professionals, where they lie beside the project: D. Berry's (1995) and M. Broadie's (2018),
 * both as in the Stan example models (github.com/stan-dev/example-models, knitr/golf).
 */
final class PublishedTables {
    private static final Path FOLDER = Path.of(Objects.requireNonNullElse(System.getProperty("cupbeam.shared"),
            Objects.requireNonNullElse(System.getenv("CUPBEAM_SHARED"), "../../shared")), "reference");

    private PublishedTables() {
    }

    static List<Tries> berry() {
        return read("berry1995.csv");
    }

    static List<Tries> broadie() {
        return read("broadie2018.csv");
    }

    private static List<Tries> read(String name) {
        Path file = FOLDER.resolve(name);
        assumeTrue(Files.isReadable(file), "no published table at " + file.toAbsolutePath());
        try {
            return Files.readAllLines(file).stream().skip(1).map(line -> line.split(","))
                    .map(row -> new Tries(Double.parseDouble(row[0]) * Units.MM_PER_FT, Integer.parseInt(row[1].strip()),
                            Integer.parseInt(row[2].strip()))).toList();
        } catch (IOException unreadable) {
            throw new AssertionError(file.toString(), unreadable);
        }
    }
}

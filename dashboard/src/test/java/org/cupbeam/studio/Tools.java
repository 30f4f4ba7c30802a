package org.cupbeam.studio;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/** Programs and reference data that tests use where the machine has them, and must have where CUPBEAM_REQUIRE_TOOLS is 1. */
public final class Tools {
    private Tools() {
    }

    /** The program's path; without it the test is skipped, or fails where tools are required. */
    public static Path path(String program) {
        return Stream.concat(Stream.of(System.getenv("PATH").split(File.pathSeparator)), Stream.of("/usr/sbin"))
                .map(folder -> Path.of(folder, program)).filter(Files::isExecutable).findFirst()
                .orElseGet(() -> missing(program));
    }

    /**
     * A file or folder of the reference data: in the folder that the system property {@code cupbeam.shared} or the
     * environment's {@code CUPBEAM_SHARED} names, or {@code shared} beside the project. Without it as without a program.
     */
    public static Path reference(String path) {
        String set = System.getProperty("cupbeam.shared", System.getenv("CUPBEAM_SHARED"));
        Path found = Path.of(set != null ? set : "../../shared").resolve(path);
        return Files.exists(found) ? found : missing("reference data (" + path + ")");
    }

    public static Path missing(String what) {
        if ("1".equals(System.getenv("CUPBEAM_REQUIRE_TOOLS"))) {
            throw new AssertionError(what + " is required, and not on this machine");
        }
        return Assumptions.abort(what + " is not on this machine");
    }
}

package org.cupbeam.studio;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/** Programs that tests use where the machine has them, and must have where CUPBEAM_REQUIRE_TOOLS is 1. */
public final class Tools {
    private Tools() {
    }

    /** The program's path; without it the test is skipped, or fails where tools are required. */
    public static Path path(String program) {
        return Stream.concat(Stream.of(System.getenv("PATH").split(File.pathSeparator)), Stream.of("/usr/sbin"))
                .map(folder -> Path.of(folder, program)).filter(Files::isExecutable).findFirst()
                .orElseGet(() -> missing(program));
    }

    static Path missing(String program) {
        if ("1".equals(System.getenv("CUPBEAM_REQUIRE_TOOLS"))) {
            throw new AssertionError(program + " is required, and not on this machine");
        }
        return Assumptions.abort(program + " is not on this machine");
    }
}

package org.cupbeam;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Assumptions;

/**
 * What tests take from outside the project: reference data that lies beside it, and programs. Where something is not at
 * hand, a test is skipped and says so; where it is required ({@code CUPBEAM_REQUIRE_TOOLS=1}) the test fails.
 */
public final class Outside {
    private Outside() {
    }

    /**
     * A file or folder of the reference data: in the folder that the system property {@code cupbeam.shared} or the
     * environment's {@code CUPBEAM_SHARED} names, or {@code shared} beside the project.
     */
    public static Path reference(String path) {
        String set = System.getProperty("cupbeam.shared", System.getenv("CUPBEAM_SHARED"));
        Path found = Path.of(set != null ? set : "../../shared").resolve(path).normalize();
        require(Files.exists(found), "reference data " + found.toAbsolutePath());
        return found;
    }

    /** The path of a program. */
    public static String program(String name) {
        String folders = System.getenv().getOrDefault("PATH", "") + ":/usr/sbin:/usr/local/sbin";
        Path found = List.of(folders.split(":")).stream().map(folder -> Path.of(folder, name))
                .filter(Files::isExecutable).findFirst().orElse(null);
        require(found != null, "the program " + name);
        return String.valueOf(found);
    }

    private static void require(boolean present, String what) {
        if (!present && "1".equals(System.getenv("CUPBEAM_REQUIRE_TOOLS"))) {
            throw new AssertionError(what + " is required, and not on this machine");
        }
        Assumptions.assumeTrue(present, what + " is not on this machine");
    }
}

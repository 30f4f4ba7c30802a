package org.cupbeam.studio;

import java.nio.file.Path;

/**
 * Where pictures of the product go: {@code target/pictures}, or with {@code -Dcupbeam.pictures=../docs/pictures} to where the
 * documents show them.
 */
final class Pictures {
    private Pictures() {
    }

    static Path of(String name) {
        return Path.of(System.getProperty("cupbeam.pictures", "target/pictures"), name + ".png");
    }
}

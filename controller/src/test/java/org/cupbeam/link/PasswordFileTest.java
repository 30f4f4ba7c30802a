package org.cupbeam.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PasswordFileTest {
    @TempDir
    private Path folder;
    private Path file;

    @BeforeEach
    void write() throws Exception {
        Assumptions.assumeTrue(FileSystems.getDefault().supportedFileAttributeViews().contains("posix"),
                "this file system knows no permissions of this kind");
        file = Files.writeString(folder.resolve("password"), "right\nand a note\n");
    }

    @ParameterizedTest
    @ValueSource(strings = {"rw-------", "r--------", "rwx------"})
    void theFirstLineOfAFileForItsOwnerAloneIsThePassword(String mode) throws Exception {
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString(mode));

        assertThat(PasswordFile.read(file)).isEqualTo("right");
    }

    @ParameterizedTest
    @ValueSource(strings = {"rw-r--r--", "rw-r-----", "rw----r--", "rw--w----", "rw-----w-"})
    void oneThatOthersMayGetAtIsRefusedWithWhatWouldDo(String mode) throws Exception {
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString(mode));

        assertThatThrownBy(() -> PasswordFile.read(file)).isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(mode).hasMessageEndingWith("chmod 600 " + file).hasMessageNotContaining("right");
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 5_000})
    void anEmptyOneAndOneThatIsNoPasswordAreRefused(int length) throws Exception {
        Files.writeString(file, "x".repeat(length));
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));

        assertThatThrownBy(() -> PasswordFile.read(file)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aLinkCountsAsWhatItLeadsTo() throws Exception {
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r--r--"));
        Path link = Files.createSymbolicLink(folder.resolve("link"), file);

        assertThatThrownBy(() -> PasswordFile.read(link)).hasMessageContaining("chmod 600 " + link);
    }
}

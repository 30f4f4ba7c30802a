package org.cupbeam.studio.web.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StaffPinTest {
    @TempDir
    private Path folder;
    private Path file;
    private StaffPin pin;

    @BeforeEach
    void open() {
        file = folder.resolve("staff-pin");
        pin = StaffPin.quick(file);
    }

    @Test
    void thereIsNoneAtFirst() {
        assertThat(pin.isSet()).isFalse();
        assertThat(pin.is("")).isFalse();
        assertThat(pin.is("000000")).isFalse();
    }

    @Test
    void knowsTheOneThatWasSet() {
        pin.set("739205");

        assertThat(pin.is("739205")).isTrue();
        assertThat(pin.is("739206")).isFalse();
        assertThat(StaffPin.quick(file).is("739205")).as("after a restart").isTrue();
    }

    @Test
    void keepsItForItsOwnerAlone() throws IOException {
        Assumptions.assumeTrue(Files.getFileStore(folder).supportsFileAttributeView("posix"), "no modes on this disk");
        pin.set("739205");

        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file))).isEqualTo("rw-------");
        assertThat(Files.readString(file)).doesNotContain("739205");
        assertThat(folder).as("nothing is left lying about").isDirectoryNotContaining(each -> !each.equals(file));
    }

    @Test
    void takesNoticeWhenItIsSetElsewhere() {
        pin.set("739205");
        String before = pin.stamp().orElseThrow();
        StaffPin.quick(file).set("850316");

        assertThat(pin.is("739205")).isFalse();
        assertThat(pin.is("850316")).isTrue();
        assertThat(pin.stamp()).isNotEmpty().isNotEqualTo(java.util.Optional.of(before));
    }

    @Test
    void theSamePinSetAgainIsAnother() {
        pin.set("739205");
        String before = pin.stamp().orElseThrow();
        pin.set("739205");

        assertThat(pin.stamp().orElseThrow()).isNotEqualTo(before);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "rubbish", "pbkdf2-sha256$10$$"})
    void aFileThatMakesNoSenseLetsNobodyIn(String text) throws IOException {
        Files.writeString(file, text);

        assertThat(pin.isSet()).isTrue();
        assertThat(pin.is("")).isFalse();
        assertThat(pin.is("rubbish")).isFalse();
        assertThat(pin.is("unreadable")).isFalse();
    }

    @Test
    void aFolderInItsPlaceLetsNobodyIn() throws IOException {
        Files.createDirectory(file);

        assertThat(pin.isSet()).isTrue();
        assertThat(pin.is("")).isFalse();
    }

    @Test
    void canBeForgotten() {
        pin.set("739205");

        assertThat(pin.forget()).isTrue();
        assertThat(pin.isSet()).isFalse();
        assertThat(pin.is("739205")).isFalse();
        assertThat(pin.forget()).isFalse();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "12345", "123456", "654321", "000000", "abcdef", "73920\u00005"})
    void refusesWhatIsTooEasilyGuessed(String given) {
        assertThatThrownBy(() -> pin.set(given)).isInstanceOf(IllegalArgumentException.class).hasMessageContaining(".");
        assertThat(pin.isSet()).isFalse();
    }

    @Test
    void isOnePinWhicheverKeyboardWroteIt() {
        pin.set("caf\u00e9-7392");

        assertThat(pin.is("cafe\u0301-7392")).isTrue();
    }

    @Test
    void refusesWhatIsLongerThanAnyPinBeforeItTakesTime() {
        pin.set("739205");

        assertThat(pin.is("9".repeat(1_000_000))).isFalse();
    }
}

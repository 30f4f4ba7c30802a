package org.cupbeam.lane;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MachineTest {
    @TempDir
    Path root;

    private void file(String path, String text) throws IOException {
        Files.createDirectories(root.resolve(path).getParent());
        Files.writeString(root.resolve(path), text);
    }

    @Test
    void aBootIsTheKernelsOrOneOfItsOwn() throws IOException {
        assertThat(Machine.at(root).boot()).isNotEqualTo(Machine.at(root).boot()).hasSize(36);
        file("proc/sys/kernel/random/boot_id", "2bfecf77-833b-48e5-beaf-d8dfb65a6540\n");
        assertThat(Machine.at(root).boot()).isEqualTo("2bfecf77-833b-48e5-beaf-d8dfb65a6540");
    }

    @Test
    void aBoardsClockIsBelievedOnceTheNetworkHasSetIt() throws IOException {
        assertThat(Machine.at(root).clockIsBelieved()).as("no board: it has a battery").isTrue();
        file("proc/device-tree/model", "Raspberry Pi 4 Model B Rev 1.4");
        assertThat(Machine.at(root).clockIsBelieved()).isFalse();
        file("run/systemd/timesync/synchronized", "");
        assertThat(Machine.at(root).clockIsBelieved()).isTrue();
    }
}

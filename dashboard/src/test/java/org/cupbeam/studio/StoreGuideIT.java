package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import org.cupbeam.studio.seed.Seed;
import org.cupbeam.studio.seed.Size;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Store;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The commands that docs/record.md gives for copies of the store, in its order, as its jar is run. */
@Timeout(120)
class StoreGuideIT {
    private static final Pattern COMMAND = Pattern.compile("(?m)^ +java -jar dashboard/target/cupbeam-studio\\.jar (store [^#\n]*)");

    @TempDir
    private Path folder;

    @Test
    void everyCommandOfThePageDoesWhatItSays() throws Exception {
        Path data = Files.createDirectory(folder.resolve("cupbeam-data"));
        try (Store store = Store.open(Database.file(data.resolve("studio.db")))) {
            Seed.fill(store, Instant.parse("2026-11-25T12:00:00Z"), 4, new Size(1, 1, 0, 0));
        }
        List<String> commands = COMMAND.matcher(Files.readString(Path.of("../docs/record.md"))).results()
                .map(each -> each.group(1).strip()).toList();

        assertThat(commands).hasSizeGreaterThan(2);
        for (String each : commands) {
            Path said = folder.resolve("said");
            List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-jar",
                    Path.of("target", "cupbeam-studio.jar").toAbsolutePath().toString()));
            command.addAll(List.of(each.split(" +")));
            Process process = new ProcessBuilder(command).directory(folder.toFile()).redirectErrorStream(true)
                    .redirectOutput(said.toFile()).start();
            assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
            assertThat(process.exitValue()).as(each + ": " + Files.readString(said)).isZero();
        }
        assertThat(folder.resolve("copy.db")).exists();
    }
}

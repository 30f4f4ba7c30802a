package org.cupbeam.edge.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIOException;

import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.cupbeam.edge.trace.VcdReader;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.RigFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EveningFilesTest {
    private static final Instant DATE = Instant.parse("2026-11-25T19:30:00Z");

    @TempDir
    private Path folder;

    private final Evening evening =
            Evening.simulate(3, PracticeLane.busy(PracticeRigs.FULL.on(11, 2, -0.5)), 40);

    @Test
    void whatIsWrittenIsWhatOurOwnReadersRead() throws Exception {
        EveningFiles.write(evening, folder.resolve("new"), DATE);

        Rig rig = RigFile.read(folder.resolve("new/rig.toml"));
        assertThat(rig).isEqualTo(evening.rig());
        assertThat(edgesRead(rig)).isEqualTo(edgesPlayed());
    }

    @Test
    void everyPuttHasARowWithItsTruth() throws Exception {
        EveningFiles.write(evening, folder, DATE);

        List<String> rows = Files.readAllLines(folder.resolve("truth.csv"));
        assertThat(rows).hasSize(1 + evening.truths().size());
        int columns = rows.get(0).split(",", -1).length;
        assertThat(rows).allSatisfy(row -> assertThat(row.split(",", -1)).hasSize(columns));
        assertThat(rows).filteredOn(row -> row.contains(",holed,,,0,1,"))
                .hasSize((int) evening.truths().stream().filter(Truth::holed).count());
    }

    @Test
    void aTraceThatIsThereAlreadyIsNotWrittenOver() throws Exception {
        EveningFiles.write(evening, folder, DATE);

        assertThatIOException().isThrownBy(() -> EveningFiles.write(evening, folder, DATE))
                .isInstanceOf(FileAlreadyExistsException.class);
    }

    private List<String> edgesRead(Rig rig) throws Exception {
        List<String> edges = new ArrayList<>();
        try (VcdReader reader = VcdReader.open(folder.resolve("new/trace.vcd"), rig)) {
            reader.drainTo((channel, active, timeNs) ->
                    edges.add(rig.channels().get(channel).name() + " " + active + " " + timeNs / 1000));
        }
        return edges;
    }

    private List<String> edgesPlayed() {
        List<String> edges = new ArrayList<>();
        evening.play((channel, active, timeNs) ->
                edges.add(evening.rig().channels().get(channel).name() + " " + active + " " + timeNs / 1000));
        return edges;
    }
}

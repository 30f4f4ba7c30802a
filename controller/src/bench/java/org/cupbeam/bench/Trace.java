package org.cupbeam.bench;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.cupbeam.edge.practice.Evening;
import org.cupbeam.edge.practice.PracticeLane;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.edge.trace.VcdWriter;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.RigFile;
import org.cupbeam.rig.file.BadFileException;

/**
 * A trace in memory, and the rig that it was taken with.
 *
 * @param vcd the bytes of its file
 */
record Trace(Rig rig, byte[] vcd) {
    private static final int PUTTS = 4_000;
    private static final long SEED = 20_261_125;

    /** Some thousand putts in a busy room, simulated, as {@code record} would have written them. */
    static Trace busy(PracticeRigs rigs) throws IOException {
        Rig rig = rigs.level();
        Evening evening = Evening.simulate(SEED, PracticeLane.busy(rig), PUTTS);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (VcdWriter writer = new VcdWriter(bytes, rig, 0, Instant.EPOCH)) {
            evening.play(writer);
        }
        return new Trace(rig, bytes.toByteArray());
    }

    /** The evenings that were recorded: in each folder {@code rig.toml} and {@code trace.vcd}. None where they are not at hand. */
    static List<Trace> recorded() throws IOException, BadFileException {
        String set = System.getProperty("cupbeam.shared", System.getenv("CUPBEAM_SHARED"));
        Path folder = Path.of(set != null ? set : "../../shared").resolve("traces");
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        List<Trace> traces = new ArrayList<>();
        try (DirectoryStream<Path> evenings = Files.newDirectoryStream(folder, Files::isDirectory)) {
            for (Path each : evenings) {
                traces.add(new Trace(RigFile.read(each.resolve("rig.toml")), Files.readAllBytes(each.resolve("trace.vcd"))));
            }
        }
        return traces;
    }
}

package org.cupbeam.edge.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.cupbeam.Outside;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * What we write, other programs read, and what they make of it we read: sigrok's library, which PulseView shows traces
 * with, and GTKWave's converters. Debian packages sigrok-cli and gtkwave.
 */
@Timeout(60)
class ForeignToolsIT {
    private static final Rig RIG = Rigs.withCupAnd("before-1", "past-1");

    @TempDir
    private Path folder;
    private Path trace;
    private List<String> edges;

    @BeforeEach
    void writeATrace() throws IOException {
        trace = folder.resolve("trace.vcd");
        Edges sent = new Edges(RIG);
        try (VcdWriter writer = VcdWriter.create(trace, RIG, 0, Instant.EPOCH)) {
            for (int i = 0; i < 300; i++) {
                long timeNs = 1_000_000 + i * 1_237_000L;
                writer.edge(i % 3, i / 3 % 2 == 0, timeNs);
                sent.edge(i % 3, i / 3 % 2 == 0, timeNs);
            }
            writer.settled(1_000_000_000);
        }
        edges = sent.all;
    }

    @Test
    void sigrokReadsEveryEdgeAtItsTime() throws Exception {
        Path itsOwn = folder.resolve("sigrok.vcd");
        run("sigrok-cli", "-I", "vcd", "-i", trace.toString(), "-O", "vcd", "-o", itsOwn.toString());
        assertThat(Edges.of(Files.readString(itsOwn), RIG)).startsWith(edges.toArray(String[]::new));
    }

    @Test
    void gtkWaveReadsEveryEdgeAtItsTime() throws Exception {
        Path fst = folder.resolve("trace.fst");
        Path itsOwn = folder.resolve("gtkwave.vcd");
        run("vcd2fst", trace.toString(), fst.toString());
        run("fst2vcd", fst.toString(), "-o", itsOwn.toString());
        assertThat(Edges.of(Files.readString(itsOwn), RIG)).startsWith(edges.toArray(String[]::new));
    }

    private void run(String... command) throws IOException, InterruptedException {
        Outside.program(command[0]);
        Path said = folder.resolve("said");
        Process process = new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(said.toFile()).start();
        assertThat(process.waitFor(30, TimeUnit.SECONDS)).as("ended in time").isTrue();
        assertThat(process.exitValue()).as(Files.readString(said)).isZero();
    }
}

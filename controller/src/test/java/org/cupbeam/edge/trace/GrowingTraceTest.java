package org.cupbeam.edge.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.cupbeam.edge.trace.VcdReader.Step;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class GrowingTraceTest {
    private static final Rig RIG = Rigs.withCupAnd("past-1");
    private static final String TRACE = """
            $comment a trace $end
            $timescale 1 us $end
            $var wire 1 ab past-1 $end
            $var wire 1 " cup $end
            $enddefinitions $end
            #17
            1ab
            b0 "
            #230
            0ab
            $comment nearly there $end
            1"
            #1000
            """;
    private static final String[] EDGES = {"past-1 on 17000", "past-1 off 230000", "cup on 230000"};

    @TempDir
    private Path folder;

    @Test
    void theReaderKeepsItsPlaceInMidWordWhereverTheFileEndsForNow() throws IOException {
        for (int cut = 0; cut <= TRACE.length(); cut++) {
            Path file = Files.writeString(folder.resolve("cut-" + cut), TRACE.substring(0, cut));
            Edges edges = new Edges(RIG);
            try (VcdReader reader = VcdReader.follow(file, RIG)) {
                assertThat(reader.drainTo(edges)).isEqualTo(Step.PAUSE);
                assertThat(reader.next()).isEqualTo(Step.PAUSE);
                Files.writeString(file, TRACE.substring(cut), StandardOpenOption.APPEND);
                assertThat(reader.drainTo(edges)).isEqualTo(Step.PAUSE);
                assertThat(edges.all).as("cut at %d", cut).containsExactly(EDGES);
                assertThat(reader.timeNs()).isEqualTo(1_000_000);
            }
        }
    }

    @Test
    void howTheInputIsCutUpMakesNoDifference() throws IOException {
        InputStream dripping = new InputStream() {
            private int at;

            @Override
            public int read() {
                throw new AssertionError("not used");
            }

            @Override
            public int read(byte[] bytes, int from, int length) {
                if (at == TRACE.length()) {
                    return -1;
                }
                bytes[from] = (byte) TRACE.charAt(at++);
                return 1;
            }
        };
        Edges edges = new Edges(RIG);
        assertThat(new VcdReader(dripping, "t.vcd", RIG).drainTo(edges)).isEqualTo(Step.END);
        assertThat(edges.all).containsExactly(EDGES);
    }

    @Test
    void aFileThatShrinksIsAnError() throws IOException {
        Path file = Files.writeString(folder.resolve("shrinks"), TRACE);
        try (VcdReader reader = VcdReader.follow(file, RIG)) {
            reader.drainTo(new Edges(RIG));
            Files.write(file, TRACE.substring(0, 50).getBytes(StandardCharsets.US_ASCII));
            assertThatThrownBy(reader::next).hasMessageContaining("has become shorter while it was followed");
        }
    }

    @Test
    void progressIsTheBytesReadSoFar() throws IOException {
        Path file = Files.writeString(folder.resolve("t"), TRACE + "#2000\n".repeat(100_000));
        long[] last = new long[2];
        try (VcdReader reader = VcdReader.open(file, RIG)) {
            reader.onProgress(bytes -> {
                assertThat(bytes).isGreaterThan(last[0]);
                last[0] = bytes;
                last[1]++;
            });
            reader.drainTo(new Edges(RIG));
        }
        assertThat(last[0]).isEqualTo(Files.size(file));
        assertThat(last[1]).isGreaterThan(2);
    }
}

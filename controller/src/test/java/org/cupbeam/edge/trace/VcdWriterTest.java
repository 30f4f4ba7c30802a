package org.cupbeam.edge.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;
import org.cupbeam.edge.trace.VcdReader.Step;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class VcdWriterTest {
    private static final Rig RIG = Rigs.withCupAnd("past-1", "past-2");
    private static final Instant DATE = Instant.parse("2026-11-25T18:00:00.123Z");
    private static final long START_NS = 7_000_000_000_000L;

    private final ByteArrayOutputStream file = new ByteArrayOutputStream();

    @Test
    void theFileIsAPlainDumpInMicroseconds() throws IOException {
        try (VcdWriter writer = writer()) {
            writer.edge(1, true, START_NS + 5_000);
            writer.edge(0, true, START_NS + 5_000);
            writer.edge(1, false, START_NS + 1_000_007_999);
        }
        assertThat(file.toString(StandardCharsets.US_ASCII)).isEqualTo("""
                $date 2026-11-25T18:00:00Z $end
                $version Cupbeam $end
                $timescale 1 us $end
                $scope module lane $end
                $var wire 1 ! cup $end
                $var wire 1 " past-1 $end
                $var wire 1 # past-2 $end
                $upscope $end
                $enddefinitions $end
                #0
                $dumpvars
                0!
                0"
                0#
                $end
                #5
                1"
                1!
                #1000007
                0"
                """);
    }

    /** Each step: which channel changes, and how long after the change before. */
    @Property(tries = 300)
    void whatIsWrittenIsReadBackEqual(@ForAll @Size(max = 2000) List<@IntRange(max = 2) Integer> channels,
            @ForAll @LongRange(max = 3_000_000_000L) long gapUs) throws IOException {
        ByteArrayOutputStream written = new ByteArrayOutputStream();
        Edges sent = new Edges(RIG);
        boolean[] state = new boolean[3];
        long timeNs = 0;
        try (VcdWriter writer = new VcdWriter(written, RIG, START_NS, DATE)) {
            for (int channel : channels) {
                timeNs += (channel + 1) * gapUs / 3 % 1_000_003 * 1000;
                state[channel] = !state[channel];
                writer.edge(channel, state[channel], START_NS + timeNs);
                sent.edge(channel, state[channel], timeNs);
            }
        }
        sent.all.add("end " + timeNs);
        assertThat(Edges.of(written.toString(StandardCharsets.US_ASCII), RIG)).isEqualTo(sent.all);
    }

    @Test
    void aFollowerSeesEachEdgeWithinAMomentOfItsTime(@TempDir Path folder) throws IOException {
        Path path = folder.resolve("t.vcd");
        Edges seen = new Edges(RIG);
        try (VcdWriter writer = VcdWriter.create(path, RIG, START_NS, DATE);
                VcdReader reader = VcdReader.follow(path, RIG)) {
            assertThat(reader.drainTo(seen)).isEqualTo(Step.PAUSE);
            writer.edge(0, true, START_NS + 100_000_000);
            writer.settled(START_NS + 300_000_000);
            assertThat(reader.drainTo(seen)).isEqualTo(Step.PAUSE);
            assertThat(reader.timeNs()).isZero();
            writer.settled(START_NS + 400_000_000);
            assertThat(reader.drainTo(seen)).isEqualTo(Step.PAUSE);
            assertThat(reader.timeNs()).isEqualTo(400_000_000);
        }
        assertThat(seen.all).containsExactly("cup on 100000000");
    }

    @Test
    void whereverTheProgramIsKilledTheFileIsATrace() throws IOException {
        List<byte[]> states = new ArrayList<>();
        OutputStream disk = new OutputStream() {
            @Override
            public void write(int each) {
                throw new AssertionError("only whole lines");
            }

            @Override
            public void write(byte[] bytes, int from, int length) {
                file.write(bytes, from, length);
                states.add(file.toByteArray());
            }
        };
        try (VcdWriter writer = new VcdWriter(disk, RIG, START_NS, DATE)) {
            for (int i = 0; i < 5000; i++) {
                writer.edge(i % 3, i / 3 % 2 == 0, START_NS + i * 1_234_567L);
            }
        }
        assertThat(states).hasSizeGreaterThan(10).allSatisfy(state -> {
            assertThat(state[state.length - 1]).isEqualTo((byte) '\n');
            Edges.of(new String(state, StandardCharsets.US_ASCII), RIG);
        });
    }

    @Test
    void theTraceEndsAtTheTimeLastSettled() throws IOException {
        try (VcdWriter writer = writer()) {
            writer.edge(0, true, START_NS + 5_000);
            writer.settled(START_NS + 8_000);
        }
        assertThat(Edges.of(file.toString(StandardCharsets.US_ASCII), RIG)).containsExactly("cup on 5000", "end 8000");
    }

    @Test
    void aLateEdgeCountsAsNowAndOneBeforeTheStartAsTheStart() throws IOException {
        try (VcdWriter writer = writer()) {
            writer.edge(0, true, START_NS - 9_000);
            writer.edge(1, true, START_NS + 9_000);
            writer.edge(2, true, START_NS + 4_000);
        }
        assertThat(Edges.of(file.toString(StandardCharsets.US_ASCII), RIG))
                .containsExactly("cup on 0", "past-1 on 9000", "past-2 on 9000", "end 9000");
    }

    @Test
    void anEarlierRecordingIsNotOverwritten(@TempDir Path folder) throws IOException {
        Path path = folder.resolve("t.vcd");
        VcdWriter.create(path, RIG, START_NS, DATE).close();
        assertThatThrownBy(() -> VcdWriter.create(path, RIG, START_NS, DATE))
                .isInstanceOf(FileAlreadyExistsException.class);
    }

    @Test
    void aFullDiskIsToldByFlushAndClose() throws IOException {
        OutputStream full = new OutputStream() {
            private boolean hasHead;

            @Override
            public void write(int each) {
            }

            @Override
            public void write(byte[] bytes, int from, int length) throws IOException {
                if (hasHead) {
                    throw new IOException("No space left on device");
                }
                hasHead = true;
            }
        };
        VcdWriter writer = new VcdWriter(full, RIG, START_NS, DATE);
        for (int i = 0; i < 5000; i++) {
            writer.edge(0, i % 2 == 0, START_NS + i);
        }
        assertThatThrownBy(writer::flush).hasMessage("the trace could not be written: No space left on device");
        assertThatThrownBy(writer::close).isInstanceOf(IOException.class);
    }

    private VcdWriter writer() throws IOException {
        return new VcdWriter(file, RIG, START_NS, DATE);
    }
}

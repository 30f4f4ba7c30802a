package org.cupbeam.bench;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.edge.trace.VcdReader;
import org.cupbeam.lane.Replay;
import org.cupbeam.rig.file.BadFileException;
import org.cupbeam.track.Tracker;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Whole evenings replayed from their traces' bytes, opened and ended anew each time. Each stage includes those before it:
 * the bytes looked at, the edges read from them, the edges tracked, the attempts told as lines.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(value = 1, jvmArgsAppend = {"-XX:+UseSerialGC", "-Xmx256m"})
@Warmup(iterations = 2, time = 1)
@Measurement(iterations = 4, time = 1)
public class ReplayBenchmark {
    static final String RECORDED = "recorded";

    /** Which: simulated on a standard or a full rig, or those that were recorded. */
    @Param({"standard", "full"})
    public String evenings;

    private List<Trace> traces;
    private long edges;
    private final byte[] buffer = new byte[1 << 18];

    /** Simulates it, or loads them. */
    @Setup
    public void prepare() throws IOException, BadFileException {
        traces = switch (evenings) {
            case "standard" -> List.of(Trace.busy(PracticeRigs.STANDARD));
            case "full" -> List.of(Trace.busy(PracticeRigs.FULL));
            case RECORDED -> Trace.recorded();
            default -> throw new IllegalArgumentException("no evenings are called " + evenings);
        };
        Count count = new Count();
        for (Trace trace : traces) {
            try (VcdReader reader = reader(trace)) {
                reader.drainTo(count);
            }
        }
        edges = count.edges;
    }

    /** The floor: each byte looked at. */
    @Benchmark
    public int bytes(Meter meter) throws IOException {
        meter.begin();
        int lines = 0;
        for (Trace trace : traces) {
            InputStream in = new ByteArrayInputStream(trace.vcd());
            for (int got = in.read(buffer); got > 0; got = in.read(buffer)) {
                for (int i = 0; i < got; i++) {
                    lines += buffer[i] == '\n' ? 1 : 0;
                }
            }
        }
        meter.end(edges, 0);
        return lines;
    }

    /** The edges read, and counted. */
    @Benchmark
    public Count read(Meter meter) throws IOException {
        meter.begin();
        Count count = new Count();
        for (Trace trace : traces) {
            try (VcdReader reader = reader(trace)) {
                reader.drainTo(count);
            }
        }
        meter.end(edges, 0);
        return count;
    }

    /** The edges read and tracked. */
    @Benchmark
    public Count track(Meter meter) throws IOException {
        meter.begin();
        Count count = new Count();
        for (Trace trace : traces) {
            Tracker tracker = new Tracker(trace.rig(), count);
            try (VcdReader reader = reader(trace)) {
                reader.drainTo(tracker);
                tracker.advance(reader.timeNs());
            }
            tracker.end();
        }
        meter.end(edges, count.attempts);
        return count;
    }

    /** The edges read and tracked, and each attempt told as a line, which is thrown away. */
    @Benchmark
    public Count tell(Meter meter) throws IOException {
        meter.begin();
        Count count = new Count();
        for (Trace trace : traces) {
            Replay replay = new Replay(trace.rig(), null, count::line);
            try (VcdReader reader = reader(trace)) {
                reader.drainTo(replay);
                replay.advance(reader.timeNs());
            }
            replay.end();
        }
        meter.end(edges, count.attempts);
        return count;
    }

    private static VcdReader reader(Trace trace) {
        return new VcdReader(new ByteArrayInputStream(trace.vcd()), "an evening", trace.rig());
    }
}

package org.cupbeam.bench;

import java.io.IOException;
import java.util.concurrent.TimeUnit;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.edge.trace.VcdReader;
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
 * Edges read and tracked without end, so that what is allocated is what an edge, or an attempt, costs, and nothing else. An
 * operation is {@value #EDGES} edges.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(value = 1, jvmArgsAppend = {"-XX:+UseSerialGC", "-Xmx256m"})
@Warmup(iterations = 2, time = 1)
@Measurement(iterations = 4, time = 1)
public class SteadyBenchmark {
    static final int EDGES = 10_000;

    /** Whether anybody putts. */
    @Param({"nobody-putts", "busy"})
    public String evening;

    private final Count count = new Count();
    private VcdReader reader;
    private Tracker tracker;

    /** Makes the evening. */
    @Setup
    public void prepare() throws IOException {
        Trace trace = evening.equals("busy") ? Trace.busy(PracticeRigs.FULL) : Noise.evening();
        reader = new VcdReader(new EndlessTrace(trace), "an endless evening", trace.rig());
        tracker = new Tracker(trace.rig(), count);
    }

    /** The next of its edges. */
    @Benchmark
    public void steady(Meter meter) throws IOException {
        meter.begin();
        long before = count.attempts;
        for (int i = 0; i < EDGES; i++) {
            reader.next();
            tracker.edge(reader.channel(), reader.active(), reader.timeNs());
        }
        meter.end(EDGES, count.attempts - before);
        if (!evening.equals("busy") && count.attempts > 0) {
            throw new IllegalStateException("nobody putted, and yet: " + count.last());
        }
    }
}

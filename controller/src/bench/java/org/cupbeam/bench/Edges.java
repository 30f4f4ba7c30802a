package org.cupbeam.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.rig.file.BadFileException;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.results.format.ResultFormatType;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.ChainedOptionsBuilder;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/** How fast edges are replayed, and what that allocates. */
final class Edges {
    private static final double MILLION = 1e6;
    /** Each includes those before it. */
    private static final List<String> STAGES = List.of("bytes", "read", "track", "tell", "steady");

    private Edges() {
    }

    static void measure(Report report) throws IOException, BadFileException, RunnerException {
        boolean recorded = !Trace.recorded().isEmpty();
        ChainedOptionsBuilder replays = new OptionsBuilder().include(ReplayBenchmark.class.getSimpleName())
                .addProfiler(GCProfiler.class).resultFormat(ResultFormatType.JSON)
                .result(report.file("edges-replay.json").toString());
        if (recorded) {
            replays.param("evenings", "standard", "full", ReplayBenchmark.RECORDED);
        }
        Collection<RunResult> results = new Runner(replays.build()).run();
        results.addAll(new Runner(new OptionsBuilder().include(SteadyBenchmark.class.getSimpleName())
                .addProfiler(GCProfiler.class).resultFormat(ResultFormatType.JSON)
                .result(report.file("edges-steady.json").toString()).build()).run());
        report.title("Edges replayed, one core");
        report.line("%-7s %-13s %10s %14s %11s %13s %13s %10s", "stage", "evening", "M edges/s", "M edges/cpu-s",
                "attempts/s", "B/edge (gc)", "B/edge (own)", "B/attempt");
        results.stream().sorted(Comparator.comparing(each -> STAGES.indexOf(stage(each)))).forEach(each -> line(each, report));
        yardstick(report);
    }

    private static String stage(RunResult result) {
        String name = result.getParams().getBenchmark();
        return name.substring(name.lastIndexOf('.') + 1);
    }

    private static void line(RunResult result, Report report) {
        String evening = result.getParams().getParam(result.getParams().getParamsKeys().iterator().next());
        double edges = value(result, "edges");
        double perOperation = edges / result.getPrimaryResult().getScore();
        double attempts = value(result, "attempts");
        boolean steady = stage(result).equals("steady") && attempts > 0;
        report.line("%-7s %-13s %10.2f %14.2f %11.0f %13.6f %13.6f %10s", stage(result), evening, edges / MILLION,
                edges / value(result, "cpuNs") * 1e9 / MILLION, attempts,
                value(result, "gc.alloc.rate.norm") / perOperation, value(result, "ownBytes") / edges,
                steady ? String.format("%.1f", value(result, "ownBytes") / attempts) : "");
    }

    private static double value(RunResult result, String name) {
        for (Result<?> each : result.getSecondaryResults().values()) {
            if (each.getLabel().endsWith(name)) {
                return each.getScore();
            }
        }
        return Double.NaN;
    }

    private static void yardstick(Report report) throws IOException {
        if (!Yardstick.isThere(report)) {
            return;
        }
        for (PracticeRigs rigs : new PracticeRigs[] {PracticeRigs.STANDARD, PracticeRigs.FULL}) {
            Path trace = report.file("busy-" + rigs.name().toLowerCase(Locale.ROOT) + ".vcd");
            Files.write(trace, Trace.busy(rigs).vcd());
            report.line("plain Python script, %s: %s", rigs, Yardstick.replay(trace));
        }
    }
}

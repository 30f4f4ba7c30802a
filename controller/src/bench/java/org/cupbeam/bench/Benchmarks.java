package org.cupbeam.bench;

import java.nio.file.Path;
import java.util.List;

/** Runs all benchmarks, or those that are named, and reports. */
public final class Benchmarks {
    private static final List<String> ALL = List.of("edges", "latency", "memory", "start");

    private Benchmarks() {
    }

    /** @param args names, or {@code all} */
    public static void main(String[] args) throws Exception {
        try (Report report = new Report(Path.of("target", "bench"))) {
            for (String name : args.length == 0 || args[0].equals("all") ? ALL : List.of(args)) {
                switch (name) {
                    case "edges" -> Edges.measure(report);
                    case "latency" -> Latency.measure(report);
                    case "memory" -> Memory.measure(report);
                    case "start" -> Start.measure(report);
                    default -> throw new IllegalArgumentException(name + " is no benchmark; there are " + ALL);
                }
            }
        }
    }
}

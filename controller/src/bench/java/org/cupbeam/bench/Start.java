package org.cupbeam.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** From nothing to a lane that is ready, beside an empty program's start; each in turn, many times. */
final class Start {
    static final List<String> LEAN = List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1");
    private static final int TIMES = 20;
    private static final int LEARNS_S = 15;
    private static final List<String> EMPTY = List.of("-cp", Path.of("target", "test-classes").toString(),
            Empty.class.getName());

    private final Samples empty = new Samples();
    private final Samples emptyLean = new Samples();
    private final Samples plain = new Samples();
    private final Samples lean = new Samples();
    private final Samples archived = new Samples();

    private Start() {
    }

    static void measure(Report report) throws IOException, InterruptedException {
        Optional<Broker> found = Broker.start(report);
        if (found.isPresent()) {
            try (Broker broker = found.get()) {
                Path folder = Files.createTempDirectory(report.file("."), "start");
                Start start = new Start();
                start.measure(Program.lane(folder, "lane-1", broker), archive(folder, broker));
                start.tell(report);
            }
        }
    }

    /** Runs a lane for a while, with some putts, and has Java keep the classes that took. */
    static Path archive(Path folder, Broker broker) throws IOException, InterruptedException {
        Path archive = folder.resolve("cupbeam.jsa");
        try (Program lane = Program.start(List.of("-XX:ArchiveClassesAtExit=" + archive, "-XX:+UseSerialGC"),
                Program.lane(folder, "lane-1", broker))) {
            lane.awaitWord("is ready");
            TimeUnit.SECONDS.sleep(LEARNS_S);
        }
        if (!Files.exists(archive)) {
            throw new IOException("Java kept no archive " + archive);
        }
        return archive;
    }

    private void measure(List<String> lane, Path archive) throws IOException {
        List<String> withArchive = List.of("-XX:SharedArchiveFile=" + archive, LEAN.get(0), LEAN.get(1));
        for (int i = 0; i < TIMES; i++) {
            time(empty, List.of(), EMPTY);
            time(plain, List.of(), lane);
            time(emptyLean, LEAN, EMPTY);
            time(lean, LEAN, lane);
            time(archived, withArchive, lane);
        }
    }

    private static void time(Samples samples, List<String> flags, List<String> program) throws IOException {
        long before = System.nanoTime();
        try (Program started = Program.start(flags, program)) {
            started.awaitWord("is ready");
            samples.add(System.nanoTime() - before);
        }
    }

    private void tell(Report report) {
        report.title("Start to ready, the lane's journal being there already");
        report.line("%s", Samples.head());
        List.of(empty.row("an empty program"), emptyLean.row("an empty program, lean"), plain.row("a lane"),
                lean.row("a lane, lean"), archived.row("a lane, lean, its classes archived"))
                .forEach(row -> report.line("%s", row));
        report.line("lean: %s", String.join(" ", LEAN));
        report.line("times an empty program's start, by the medians: %.1f; lean %.1f; archived %.1f (bar 5)",
                plain.ms(0.5) / empty.ms(0.5), lean.ms(0.5) / empty.ms(0.5), archived.ms(0.5) / empty.ms(0.5));
    }
}

package org.cupbeam.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** What a lane keeps resident after a minute's play, and what everything in one process does. */
final class Memory {
    private static final int PLAYS_S = 60;
    private static final List<String> LEAN = List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-Xmx48m");

    private final Report report;
    private final Path folder;

    private Memory(Report report, Path folder) {
        this.report = report;
        this.folder = folder;
    }

    static void measure(Report report) throws IOException, InterruptedException {
        Optional<Broker> found = Broker.start(report);
        if (found.isPresent()) {
            try (Broker broker = found.get()) {
                new Memory(report, Files.createTempDirectory(report.file("."), "memory")).measure(broker);
            }
        }
    }

    private void measure(Broker broker) throws IOException, InterruptedException {
        List<String> archived = new ArrayList<>(LEAN);
        archived.add("-XX:SharedArchiveFile=" + Start.archive(folder, broker));
        List<Program> all = new ArrayList<>();
        try {
            all.add(lane("a", List.of(), broker));
            all.add(lane("b", LEAN, broker));
            all.add(lane("c", archived, broker));
            boolean studio = Files.exists(Program.STUDIO);
            if (studio) {
                all.add(studio("d", List.of()));
                all.add(studio("e", List.of("-XX:+UseSerialGC", "-Xmx96m")));
            }
            TimeUnit.SECONDS.sleep(PLAYS_S);
            report.title("Resident after " + PLAYS_S + " s of play");
            report.line("%-60s %8s %8s %8s", "MB", "now", "most", "in files");
            tell("a lane", all.get(0));
            tell("a lane, " + String.join(" ", LEAN), all.get(1));
            tell("a lane, the same and its classes archived", all.get(2));
            if (studio) {
                tell("broker, lane, host and pages in one", all.get(3));
                tell("broker, lane, host and pages in one, -XX:+UseSerialGC -Xmx96m", all.get(4));
            } else {
                report.line("all in one: not measured, %s is not built", Program.STUDIO);
            }
        } finally {
            all.forEach(Program::close);
        }
    }

    private Program lane(String name, List<String> flags, Broker broker) throws IOException {
        Program program = Program.start(flags, Program.lane(folder, name, broker));
        program.awaitWord("is ready");
        return program;
    }

    private Program studio(String name, List<String> flags) throws IOException {
        Program program = Program.start(flags, List.of("-jar", Program.STUDIO.toString(), "--practice", "--port", "0",
                "--mqtt-port", "0", "--data", folder.resolve(name).toString()));
        program.awaitWord("Studio at");
        return program;
    }

    private void tell(String what, Program program) throws IOException {
        report.line("%-60s %8.1f %8.1f %8.1f", what, program.residentMb("VmRSS"), program.residentMb("VmHWM"),
                program.residentMb("RssFile"));
    }
}

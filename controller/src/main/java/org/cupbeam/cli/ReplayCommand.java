package org.cupbeam.cli;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.drill.Play;
import org.cupbeam.edge.trace.TraceException;
import org.cupbeam.edge.trace.VcdReader;
import org.cupbeam.edge.trace.VcdReader.Step;
import org.cupbeam.lane.Replay;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.RigFile;
import org.cupbeam.rig.file.BadFileException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Says what a recorded trace meant. */
@Command(name = "replay", mixinStandardHelpOptions = true, description = {
    "Reads a trace and prints its attempts, one JSON object a line.",
    "With a drill, each also says whose it was and from where, and the ends of runs and duels follow."})
final class ReplayCommand implements Callable<Integer> {
    private static final long TAIL_MS = 100;

    @Option(names = "--rig", required = true, paramLabel = "RIG.toml", description = "what is fitted to the lane")
    private Path rigFile;

    @Option(names = "--drill", paramLabel = "DRILL.toml", description = "the drill that was played")
    private Path drillFile;

    @Option(names = "--players", split = ",", paramLabel = "NAME",
            description = "who played it, in the order of their turns; one who has no name otherwise")
    private List<String> players = List.of("player");

    @Option(names = "--tail", description = "go on as the trace grows, until interrupted")
    private boolean tail;

    @Parameters(paramLabel = "TRACE.vcd", description = "a Value Change Dump (IEEE 1364)")
    private Path trace;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws Exception {
        try {
            Rig rig = RigFile.read(rigFile);
            Refusal.ofFolder(trace, "a trace");
            return replay(rig, play(rig));
        } catch (BadFileException | TraceException nonsense) {
            throw new Refusal(nonsense);
        }
    }

    private Play play(Rig rig) throws BadFileException, Refusal {
        boolean named = spec.commandLine().getParseResult().hasMatchedOption("--players");
        if (drillFile == null && named) {
            throw new Refusal("--players: nobody plays without a drill; add --drill DRILL.toml");
        }
        try {
            return drillFile == null ? null : Play.begin(DrillFile.read(drillFile), players, rig.limitMm());
        } catch (IllegalArgumentException nonsense) {
            throw new Refusal("--players: " + nonsense.getMessage());
        }
    }

    private int replay(Rig rig, Play play) throws IOException, InterruptedException {
        PrintWriter out = new PrintWriter(new BufferedWriter(
                new OutputStreamWriter(System.out, StandardCharsets.UTF_8), 1 << 16), false);
        Replay replay = new Replay(rig, play, line -> {
            out.print(line);
            out.print('\n');
        });
        try (VcdReader reader = tail ? VcdReader.follow(trace, rig) : VcdReader.open(trace, rig);
                Progress progress = Progress.onTerminal("replay", tail ? 0 : Files.size(trace))) {
            if (!tail) {
                reader.onProgress(progress);
            }
            while (reader.drainTo(replay) == Step.PAUSE) {
                replay.advance(reader.timeNs());
                out.flush();
                if (out.checkError()) {
                    return 1;
                }
                Thread.sleep(TAIL_MS);
            }
            replay.advance(reader.timeNs());
            replay.end();
        } finally {
            out.flush();
        }
        return out.checkError() ? 1 : 0;
    }
}

package org.cupbeam.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.function.Supplier;
import org.cupbeam.edge.EdgeSource;
import org.cupbeam.edge.board.BoardEdges;
import org.cupbeam.edge.board.BoardException;
import org.cupbeam.edge.practice.PracticeLane;
import org.cupbeam.edge.practice.Tempo;
import org.cupbeam.edge.trace.TraceException;
import org.cupbeam.edge.trace.TraceSource;
import org.cupbeam.lane.Lamp;
import org.cupbeam.lane.Lanes;
import org.cupbeam.lane.PracticeGreen;
import org.cupbeam.lane.Surroundings;
import org.cupbeam.lane.UpNext;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.RigFile;
import org.cupbeam.rig.file.BadFileException;
import picocli.CommandLine.Option;

/** Where edges come from: this board's pins, a simulated green, or a recorded trace. */
final class EdgeOptions {
    @Option(names = "--rig", required = true, paramLabel = "RIG.toml", description = "what is fitted to the lane")
    Path rigFile;

    @Option(names = "--practice", description = "putt on a simulated green, fitted as the rig file says, and not on"
            + " this board's pins")
    boolean practice;

    @Option(names = "--trace", paramLabel = "TRACE.vcd", description = "have a recorded trace happen again, and take"
            + " it for the sensors")
    Path traceFile;

    @Option(names = "--from", paramLabel = "SECONDS", description = "where in the trace to begin; ${DEFAULT-VALUE}")
    double fromS;

    @Option(names = "--speed", paramLabel = "TIMES",
            description = "how many times as fast the simulated green or the trace runs, 0.1 to 1000; ${DEFAULT-VALUE}")
    double speed = 1;

    @Option(names = "--seed", paramLabel = "NUMBER", description = "the same number putts the same")
    long seed = System.nanoTime();

    private Tempo tempo;
    private TraceSource trace;

    /** What is fitted; with it, whether the options make sense together. */
    Rig rig() throws Refusal, IOException {
        check();
        tempo = practice ? Tempo.times(speed) : null;
        try {
            Rig rig = RigFile.read(rigFile);
            trace = traceFile == null ? null
                    : TraceSource.open(traceFile, rig, Math.round(fromS * 1e9), speed, System::nanoTime);
            return rig;
        } catch (BadFileException | TraceException nonsense) {
            throw new Refusal(nonsense);
        }
    }

    private void check() throws Refusal {
        if (practice && traceFile != null) {
            throw new Refusal("--trace: the edges come from one place alone; leave out --practice");
        }
        if (speed != 1 && !practice && traceFile == null) {
            throw new Refusal("--speed: a real green runs as fast as it does; add --practice for a simulated one");
        }
        if (!(speed >= 0.1 && speed <= 1000)) {
            throw new Refusal("--speed: is " + speed + "; give 0.1 to 1000");
        }
        if (fromS != 0 && traceFile == null) {
            throw new Refusal("--from: is a place in a trace; add --trace TRACE.vcd");
        }
        if (!(fromS >= 0 && fromS <= 1e9)) {
            throw new Refusal("--from: is " + fromS + "; give seconds from the trace's beginning, 0 to 1000000000");
        }
    }

    /** The clock of the edges, and the machine's own for the rest. */
    Surroundings surroundings() {
        Surroundings machine = Surroundings.ofThisMachine(Version.text());
        return practice ? machine.at(tempo::nowNs, tempo.factor())
                : trace != null ? machine.at(trace::nowNs, speed) : machine;
    }

    /** The lamp that the rig has; none where no ball rolls. */
    Lamp lamp(Rig rig) throws IOException {
        try {
            return practice || trace != null ? Lamp.NONE : Lanes.lamp(rig);
        } catch (BoardException noPin) {
            throw new IOException(noPin.getMessage(), noPin);
        }
    }

    /** The edges; where they are simulated, the next putt is asked for. */
    EdgeSource open(Rig rig, Supplier<UpNext> next) throws IOException {
        if (practice) {
            return PracticeGreen.of(seed, PracticeLane.busy(rig), tempo, next);
        }
        if (trace != null) {
            return trace;
        }
        try {
            return BoardEdges.open(rig);
        } catch (BoardException noBoard) {
            throw new IOException(noBoard.getMessage() + "; for a simulated green add --practice", noBoard);
        }
    }
}

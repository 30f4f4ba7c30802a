package org.cupbeam.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.function.Supplier;
import org.cupbeam.edge.EdgeSource;
import org.cupbeam.edge.board.BoardEdges;
import org.cupbeam.edge.board.BoardException;
import org.cupbeam.edge.practice.PracticeLane;
import org.cupbeam.edge.practice.Tempo;
import org.cupbeam.lane.Lamp;
import org.cupbeam.lane.Lanes;
import org.cupbeam.lane.PracticeGreen;
import org.cupbeam.lane.Surroundings;
import org.cupbeam.lane.UpNext;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.RigFile;
import org.cupbeam.rig.file.BadFileException;
import picocli.CommandLine.Option;

/** Where edges come from: this board's pins, or a simulated green. */
final class EdgeOptions {
    @Option(names = "--rig", required = true, paramLabel = "RIG.toml", description = "what is fitted to the lane")
    Path rigFile;

    @Option(names = "--practice", description = "putt on a simulated green, fitted as the rig file says, and not on"
            + " this board's pins")
    boolean practice;

    @Option(names = "--speed", paramLabel = "TIMES",
            description = "how many times as fast the simulated green runs, 0.1 to 1000; ${DEFAULT-VALUE}")
    double speed = 1;

    @Option(names = "--seed", paramLabel = "NUMBER", description = "the same number putts the same")
    long seed = System.nanoTime();

    private Tempo tempo;

    Rig rig() throws Refusal {
        if (speed != 1 && !practice) {
            throw new Refusal("--speed: a real green runs as fast as it does; add --practice for a simulated one");
        }
        if (!(speed >= 0.1 && speed <= 1000)) {
            throw new Refusal("--speed: is " + speed + "; give 0.1 to 1000");
        }
        tempo = practice ? Tempo.times(speed) : null;
        try {
            return RigFile.read(rigFile);
        } catch (BadFileException nonsense) {
            throw new Refusal(nonsense);
        }
    }

    /** The clock of the edges, and the machine's own for the rest. */
    Surroundings surroundings() {
        Surroundings machine = Surroundings.ofThisMachine(Version.text());
        return practice ? machine.at(tempo::nowNs, tempo.factor()) : machine;
    }

    /** The lamp that the rig has; none on a simulated green. */
    Lamp lamp(Rig rig) throws IOException {
        try {
            return practice ? Lamp.NONE : Lanes.lamp(rig);
        } catch (BoardException noPin) {
            throw new IOException(noPin.getMessage(), noPin);
        }
    }

    /** The edges; where they are simulated, the next putt is asked for. */
    EdgeSource open(Rig rig, Supplier<UpNext> next) throws IOException {
        if (practice) {
            return PracticeGreen.of(seed, PracticeLane.busy(rig), tempo, next);
        }
        try {
            return BoardEdges.open(rig);
        } catch (BoardException noBoard) {
            throw new IOException(noBoard.getMessage() + "; for a simulated green add --practice", noBoard);
        }
    }
}

package org.cupbeam.lane;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.edge.board.BoardEdges;
import org.cupbeam.edge.board.BoardException;
import org.cupbeam.edge.board.BoardOutput;
import org.cupbeam.edge.practice.PracticeLane;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.edge.practice.Tempo;
import org.cupbeam.event.Command.Start;
import org.cupbeam.event.Tags;
import org.cupbeam.event.Topics;
import org.cupbeam.journal.JournalException;
import org.cupbeam.link.LinkOptions;
import org.cupbeam.rig.Rig;
import org.cupbeam.rig.RigFile;
import org.cupbeam.rig.file.BadFileException;

/** Whole lanes, running, for a program that has them beside other things. Whoever starts one closes it. */
public final class Lanes {
    private Lanes() {
    }

    /**
     * A lane on this board's pins.
     *
     * @param folder  for its journal
     * @param broker  the studio's, as {@code tcp://127.0.0.1:1883}
     * @param version the program's
     * @throws IOException with what is wrong with the rig file, the board or the journal, and what would do
     */
    public static Lane onBoard(Topics topics, Path rigFile, Path folder, String broker, String version)
            throws IOException {
        try {
            Rig rig = RigFile.read(rigFile);
            BoardEdges edges = BoardEdges.open(rig);
            Lane lane = Lane.open(LaneSettings.of(topics, rig, journal(folder, topics)).with(lamp(rig)),
                    Surroundings.ofThisMachine(version), LinkOptions.open(broker));
            lane.start(edges);
            return lane;
        } catch (BoardException noBoard) {
            throw new IOException(noBoard.getMessage() + "; for a lane on a simulated green use --practice", noBoard);
        } catch (BadFileException | JournalException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    /**
     * A lane on a simulated green, with every sensor, in a busy room: the ladder is being played, or whatever was.
     *
     * @param players two for a duel, one for a run
     * @param speed   how many times as fast as a real one it runs
     * @throws IOException with what is wrong with the journal, and what would do
     */
    public static Lane simulated(Topics topics, List<String> players, double speed, Path folder, String broker,
                                 String version) throws IOException {
        try {
            PracticeLane green = PracticeLane.busy(PracticeRigs.withPedal(PracticeRigs.FULL.level()));
            Tempo tempo = Tempo.times(speed);
            Start start = new Start(DrillFile.preset("ladder"), players,
                    new Tags(Tags.Break.STRAIGHT, Tags.Slope.LEVEL));
            Lane lane = Lane.open(LaneSettings.of(topics, green.rig(), journal(folder, topics)).with(start),
                    Surroundings.ofThisMachine(version).at(tempo::nowNs, tempo.factor()), LinkOptions.open(broker));
            lane.start(PracticeGreen.of(System.nanoTime(), green, tempo, lane::upNext));
            return lane;
        } catch (JournalException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    /** The lamp on this board that a rig has, if it has one. It keeps its rhythm for as long as the program runs. */
    public static Lamp lamp(Rig rig) throws BoardException {
        if (rig.lampGpio().isEmpty()) {
            return Lamp.NONE;
        }
        BoardOutput pin = BoardOutput.open(rig.lampGpio().getAsInt());
        return new PinLamp(pin::set, System::nanoTime).start();
    }

    private static Path journal(Path folder, Topics topics) {
        return folder.resolve(topics.studio() + "." + topics.lane() + ".db");
    }
}

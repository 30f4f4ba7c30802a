package org.cupbeam.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import org.cupbeam.edge.EdgeSource;
import org.cupbeam.edge.trace.VcdWriter;
import org.cupbeam.lane.Surroundings;
import org.cupbeam.lane.UpNext;
import org.cupbeam.rig.Rig;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Writes down what the sensors say. */
@Command(name = "record", mixinStandardHelpOptions = true, description = {
    "Writes a trace of a lane's sensors, until interrupted.",
    "PulseView and GTKWave open it, and replay says what it meant."})
final class RecordCommand implements Callable<Integer> {
    @Mixin
    private EdgeOptions edges;

    @Parameters(paramLabel = "OUT.vcd", description = "the trace to be written; no file that is there already")
    private Path out;

    @Override
    public Integer call() throws Exception {
        Rig rig = edges.rig();
        Surroundings around = edges.surroundings();
        EdgeSource source = edges.open(rig, () -> UpNext.NOBODY);
        Recording recording = new Recording(source, writer(rig, around));
        Runtime.getRuntime().addShutdownHook(new Thread(recording::close, "end"));
        recording.start();
        System.err.println("cupbeam: recording to " + out.toAbsolutePath().normalize() + " until interrupted");
        new CountDownLatch(1).await();
        return 0;
    }

    private VcdWriter writer(Rig rig, Surroundings around) throws IOException, Refusal {
        Refusal.ofFolder(out, "a trace");
        try {
            return VcdWriter.create(out, rig, around.nanoTime().getAsLong(), around.wall().instant());
        } catch (FileAlreadyExistsException there) {
            throw new Refusal(out + ": is there already, and stays as it is; name another file");
        } catch (NoSuchFileException nowhere) {
            throw new Refusal(out + ": there is no folder " + out.toAbsolutePath().getParent() + "; make it, or name another file");
        }
    }
}

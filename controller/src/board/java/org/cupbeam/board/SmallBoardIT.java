package org.cupbeam.board;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.cupbeam.Outside;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.edge.trace.VcdReader;
import org.cupbeam.rig.Rig;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Broker, lane, host and pages in one process, on a board with 512 MB. */
class SmallBoardIT {
    private static final Path FOLDER = Path.of(System.getProperty("cupbeam.board", "target/board"));
    private static final Path STUDIO = Path.of("..", "dashboard", "target", "cupbeam-studio.jar");
    private static final int MEMORY_MB = Integer.getInteger("cupbeam.memoryMb", 512);
    private static final int PRESENT_MB = 64;
    private static final long STRETCH_NS = 97_000_000_000L;
    /** How often the evening is played until nothing held it up. */
    private static final int TIMES = 6;
    private static final String ARCHIVED = "-XX:SharedArchiveFile=/data/studio.jsa ";
    private static final int STARTS = Integer.getInteger("cupbeam.starts", 2);

    private final List<AutoCloseable> open = new ArrayList<>();
    private Machine machine;
    private BoardStudio studio;
    private Report report;

    @AfterEach
    void end() throws Exception {
        for (AutoCloseable each : open) {
            each.close();
        }
    }

    @Test
    void aBoardWithLittleMemoryKeepsEveryPutt(@TempDir Path sockets) throws Exception {
        Path evening = Outside.reference("traces/clean-standard");
        Outside.program("mke2fs");
        Assumptions.assumeTrue(Files.exists(STUDIO), STUDIO + " is not built");
        Path files = FOLDER.resolve("small");
        Path folder = Files.createDirectories(files.resolve("lane/org/cupbeam/board")).resolve("../../..").normalize();
        Files.write(folder.resolve("cupbeam-studio.jar"), Files.readAllBytes(STUDIO));
        Files.write(folder.resolve("org/cupbeam/board/Empty.class"),
                Files.readAllBytes(Path.of("target/test-classes/org/cupbeam/board/Empty.class")));
        Rig rig = Wiring.fit(evening.resolve("rig.toml"), folder.resolve("rig.toml"));
        report = new Report(FOLDER.resolve("small.txt"));
        Files.deleteIfExists(report.file());
        machine = new Machine(Image.make(FOLDER.resolve("image")).onDisk(files, FOLDER.resolve("card.img")), MEMORY_MB, sockets);
        open.add(machine);
        Pins pins = new Pins(machine);
        open.add(0, pins);
        for (int i = 0; i < rig.channels().size(); i++) {
            pins.set(i, false);
        }
        Kernel kernel = new Kernel(machine, rig);
        studio = new BoardStudio(machine);
        report.line("%d MB: the system sees %d, of which %d are free before anything starts", MEMORY_MB,
                studio.memoryMb("MemTotal"), studio.memoryMb("MemAvailable"));

        starts();
        studio.awaitLane();
        Drill drill = DrillFile.preset("ladder");
        List<Edge> stretch = Edge.of(VcdReader.open(evening.resolve("trace.vcd"), rig), STRETCH_NS);
        List<Told> expected = Told.replay(rig, drill, stretch);
        Hand hand = new Hand(pins, kernel, rig, drill, report);
        Played played = hand.play(stretch);
        for (int times = 1; times < TIMES && played.isHeldUp(); times++) {
            studio.terminate();
            studio.forget();
            studio.start(ARCHIVED);
            studio.awaitLane();
            played = hand.play(stretch);
        }
        hand.tell();
        played.assumeNotHeldUp();
        TimeUnit.SECONDS.sleep(10);
        keeps(expected);
        report.line("after %d putts: resident %d MB, at most %d; free for others %d MB, swapped %d MB", expected.size(),
                studio.ofProcessMb("VmRSS"), studio.ofProcessMb("VmHWM"), studio.memoryMb("MemAvailable"),
                studio.memoryMb("SwapTotal") - studio.memoryMb("SwapFree"));
        assertThat(studio.memoryMb("MemAvailable")).isGreaterThan(PRESENT_MB);
        studio.terminate();
    }

    /** Its start beside that of an empty program; the last one runs on. */
    private void starts() throws IOException, InterruptedException {
        List<Double> empty = new ArrayList<>();
        for (int i = 0; i < 2 * STARTS; i++) {
            empty.add(studio.emptyS());
        }
        double emptyS = median(empty);
        report.line("an empty program: %.2f s of %s", emptyS, empty);
        starts("plain", "", emptyS);
        studio.start("-XX:ArchiveClassesAtExit=/data/studio.jsa ");
        studio.terminate();
        report.line("its archive of classes: %s", machine.run("ls -l /data/studio.jsa", 10).out());
        starts("with its classes archived", ARCHIVED, emptyS);
        studio.start(ARCHIVED);
    }

    private void starts(String how, String flag, double emptyS) throws IOException, InterruptedException {
        List<Double> all = new ArrayList<>();
        long residentMb = 0;
        for (int i = 0; i < STARTS; i++) {
            all.add(studio.start(flag));
            residentMb = studio.ofProcessMb("VmRSS");
            studio.terminate();
        }
        report.line("to its first page, %s: %.2f s of %s, %.1f times the empty program; resident then %d MB", how, median(all), all,
                median(all) / emptyS, residentMb);
    }

    private void keeps(List<Told> expected) throws IOException, InterruptedException {
        JsonNode putts = new ObjectMapper().readTree(studio.page("/api/lanes/home/lane-1/putts")).path("putts");
        List<Boolean> holed = new ArrayList<>();
        putts.forEach(each -> holed.add(0, each.path("holed").asBoolean()));
        assertThat(holed).as("putts holed; its lane says: %s", studio.page("/api/health"))
                .isEqualTo(expected.stream().map(each -> each.sort().startsWith("holed")).toList());
    }

    private static double median(List<Double> values) {
        return values.stream().sorted().toList().get(values.size() / 2);
    }
}

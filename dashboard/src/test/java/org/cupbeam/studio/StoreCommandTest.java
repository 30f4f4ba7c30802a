package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.ingest.Batch;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Keeper;
import org.cupbeam.studio.store.Store;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class StoreCommandTest {
    private static final int EVENTS = 60;
    @TempDir
    private Path folder;
    private Path file;
    private final StringWriter said = new StringWriter();

    @BeforeEach
    void fill() {
        file = folder.resolve("studio.db");
        ScriptedLane lane = new ScriptedLane("bay-1", "first");
        List<Arrival> putts = IntStream.range(0, EVENTS).mapToObj(i -> lane.passes(30).puttsOutsideAnyRun())
                .map(each -> new Arrival(each.source(), each.sequence(), each.time(), each, null, ScriptedLane.json(each), Instant.EPOCH))
                .toList();
        try (Store store = Store.open(Database.file(file))) {
            new Keeper(store).commit(new Batch(putts, List.of(), List.of()));
        }
    }

    private int run(String... arguments) {
        said.getBuffer().setLength(0);
        PrintWriter to = new PrintWriter(said, true);
        CommandLine line = new CommandLine(new Studio()).setOut(to).setErr(to);
        String[] all = Arrays.copyOf(arguments, arguments.length + 1);
        System.arraycopy(arguments, 0, all, 1, arguments.length);
        all[0] = "store";
        return line.execute(all);
    }

    @Test
    void aSoundStoreAndADamagedOneAreToldApartByTheExitStatus() throws Exception {
        assertThat(run("check", "--data", folder.toString())).as(said::toString).isZero();
        assertThat(said.toString()).contains("is sound. 60 events, 60 attempts").doesNotContain("missing");
        byte[] bytes = Files.readAllBytes(file);
        Files.write(file, Arrays.copyOf(bytes, bytes.length / 2));
        assertThat(run("check", "--data", folder.toString())).isEqualTo(1);
        assertThat(said.toString()).contains("is damaged", "See 'store repair'");
    }

    @Test
    void aDamagedStoreIsLookedAtAndRepairedAndTheDamagedOneKept() throws Exception {
        byte[] bytes = Files.readAllBytes(file);
        int at = new String(bytes, java.nio.charset.StandardCharsets.ISO_8859_1).indexOf("\"specversion\"");
        Arrays.fill(bytes, at, at + 400, (byte) 0);
        Files.write(file, bytes);

        assertThat(run("repair", "--look", "--data", folder.toString())).as(said::toString).isZero();
        assertThat(said.toString()).contains("would hold 59 events, 60 attempts", "the lane is asked for them again", "Nothing was changed");
        assertThat(Files.readAllBytes(file)).isEqualTo(bytes);
        assertThat(run("repair", "--data", folder.toString())).as(said::toString).isZero();
        assertThat(said.toString()).contains("holds 59 events, 60 attempts", "59 events are kept, each with the check sum that it had",
                "1 attempts that have no event", "What was there is now " + folder.toRealPath().resolve("studio.db.damaged-"));
        assertThat(run("check", "--data", folder.toString())).as(said::toString).isZero();
        assertThat(said.toString()).contains("some are not there since a repair, and their lanes are asked for those");
        assertThat(run("repair", "--data", folder.toString())).isZero();
        assertThat(said.toString()).contains("is sound, and stays as it is");
    }

    @Test
    void aCopyIsMadeBesideARunningStudioAndRestoredWhenThatIsStopped() throws Exception {
        Path copy = folder.resolve("copy.db");
        try (DataFolder claimed = DataFolder.claim(folder); Store running = Store.open(Database.file(file))) {
            int events = running.read(h -> h.createQuery("SELECT count(*) FROM event").mapTo(Integer.class).one());
            assertThat(events).isEqualTo(EVENTS);
            assertThat(run("backup", copy.toString(), "--data", folder.toString())).as(said::toString).isZero();
            assertThat(said.toString()).contains("with 60 events");
            assertThat(run("restore", copy.toString(), "--data", folder.toString())).isEqualTo(2);
            assertThat(said.toString()).contains("is in use by another studio");
        }
        assertThat(run("backup", copy.toString(), "--data", folder.toString())).isEqualTo(2);
        assertThat(said.toString()).contains("is there already");
        Files.delete(file);
        assertThat(run("restore", copy.toString(), "--data", folder.toString())).as(said::toString).isZero();
        assertThat(said.toString()).contains("is as in the copy, with 60 events", "forget them again");
    }

    @Test
    void sumsThatAreNotWhatTheyAreSumsOfAreSaidAndMadeAnewWhileTheStudioIsStopped() throws Exception {
        try (DataFolder claimed = DataFolder.claim(folder); Store running = Store.open(Database.file(file))) {
            running.writing(h -> h.execute("UPDATE lane_quarter SET used_ms = used_ms + 1 WHERE quarter = (SELECT min(quarter) FROM lane_quarter)"));
            assertThat(run("rebuild", "--data", folder.toString())).isEqualTo(2);
            assertThat(said.toString()).contains("is in use by another studio");
        }
        assertThat(run("check", "--data", folder.toString())).isEqualTo(1);
        assertThat(said.toString()).contains("1 quarter hours of use are not what the attempts say: 'store rebuild' makes them anew");
        assertThat(run("rebuild", "--data", folder.toString())).as(said::toString).isZero();
        assertThat(said.toString()).contains("quarter hours of use, and 1 differed", "0 sums of players' runs, as they were");
        assertThat(run("check", "--data", folder.toString())).as(said::toString).isZero();
    }

    @Test
    void whatMakesNoSenseAndWhatIsNotOursToLookAfterIsRefused() {
        assertThat(run("check", "--data", folder.resolve("none").toString())).isEqualTo(2);
        assertThat(said.toString()).contains("there is no folder").doesNotContain("\tat ");
        assertThat(run("restore", folder.resolve("none.db").toString(), "--data", folder.toString())).isEqualTo(2);
        assertThat(said.toString()).contains("there is no such file");
        assertThat(run("backup", folder.resolve("copy.db").toString(), "--store", "jdbc:postgresql://localhost/studio?user=ana&password=secret")).isEqualTo(2);
        assertThat(said.toString()).doesNotContain("secret").contains("in PostgreSQL; its own tools do that, also while the studio runs: "
                + "pg_dump --format=custom --file=studio.dump --dbname='postgresql://localhost/studio?user=ana'");
        assertThat(run("polish")).isEqualTo(2);
        assertThat(run("--help")).isZero();
        assertThat(said.toString()).contains("check", "repair", "rebuild", "backup", "restore");
    }
}

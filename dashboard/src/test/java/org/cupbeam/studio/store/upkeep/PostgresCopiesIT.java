package org.cupbeam.studio.store.upkeep;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.cupbeam.studio.PostgresServer;
import org.cupbeam.studio.Studio;
import org.cupbeam.studio.Tools;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Store;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** A store in PostgreSQL: checked by us, copied and put back by its own tools with the very commands that ours names. */
class PostgresCopiesIT {
    private static final Evenings EVENINGS = new Evenings(4);

    @TempDir
    private Path folder;
    private final StringWriter said = new StringWriter();

    @Test
    void isCopiedAndRestoredByTheCommandsThatAreNamedAndCheckedByOurs() throws Exception {
        Path bin = PostgresServer.bin();
        if (!Files.isExecutable(bin.resolve("pg_dump"))) {
            Tools.missing("PostgreSQL's pg_dump");
        }
        String url = PostgresServer.emptyDatabase();
        try (Store store = Store.open(Database.at(url))) {
            EVENINGS.sendTo(store, 100);
        }
        assertThat(store("check", url)).as(said::toString).isZero();
        assertThat(said.toString()).contains("is sound. " + EVENINGS.all().size() + " events", "pg_amcheck");

        assertThat(store("backup", url)).isEqualTo(2);
        run(bin, said.toString());
        try (Store store = Store.open(Database.at(url))) {
            store.writing(h -> h.execute("DELETE FROM attempt WHERE id = 3"));
        }
        assertThat(store("check", url)).as(said::toString).isEqualTo(1);
        assertThat(said.toString()).contains("the attempt is not there");

        assertThat(store("restore", url)).isEqualTo(2);
        run(bin, said.toString());
        assertThat(store("check", url)).as(said::toString).isZero();
    }

    private int store(String command, String url) {
        said.getBuffer().setLength(0);
        PrintWriter to = new PrintWriter(said, true);
        List<String> words = command.equals("check") ? List.of("store", command, "--store", url)
                : List.of("store", command, "copy.db", "--store", url);
        return new CommandLine(new Studio()).setOut(to).setErr(to).execute(words.toArray(String[]::new));
    }

    private void run(Path bin, String advice) throws Exception {
        String command = advice.substring(advice.indexOf("runs: ") + 6).strip();
        Process process = new ProcessBuilder("sh", "-c", bin + "/" + command).directory(folder.toFile()).redirectErrorStream(true)
                .redirectOutput(folder.resolve("said").toFile()).start();
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).as(command + ": " + Files.readString(folder.resolve("said"))).isZero();
    }
}

package org.cupbeam.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

/** Files that are none, or cannot be: each command names the one that is wrong, before any work has begun. */
class WrongFilesTest {
    @TempDir
    private Path folder;
    private Path rig;
    private final StringWriter said = new StringWriter();

    @BeforeEach
    void fit() throws Exception {
        rig = Files.writeString(folder.resolve("rig.toml"), """
                [green]
                stimp_ft = 10.0
                uphill_percent = 0.0

                [overshoot]
                limit_mm = 914.4

                [cup]
                gpio = 17

                [[beam]]
                name = "before-1"
                gpio = 22
                position_mm = -300.0
                height_mm = 21.0
                """);
    }

    private int run(Object command, Object... arguments) {
        String[] words = new String[arguments.length];
        for (int i = 0; i < words.length; i++) {
            words[i] = arguments[i].toString();
        }
        PrintWriter to = new PrintWriter(said, true);
        return new CommandLine(command).setOut(to).setErr(to)
                .setExecutionExceptionHandler((failure, line, parsed) -> Cupbeam.explain(failure, line.getErr())).execute(words);
    }

    @Test
    void aFolderIsNoTraceToReplay() {
        assertThat(run(new ReplayCommand(), "--rig", rig, folder)).isEqualTo(2);
        assertThat(said).hasToString("cupbeam: " + folder + ": is a folder; name a trace in it\n");
    }

    @Test
    void aRecordingIntoAFolderThatIsNotThereNamesTheFolder() {
        Path out = folder.resolve("not/there.vcd");
        assertThat(run(new RecordCommand(), "--practice", "--rig", rig, out)).isEqualTo(2);
        assertThat(said).hasToString("cupbeam: " + out + ": there is no folder " + out.getParent() + "; make it, or name another file\n");
    }

    @ParameterizedTest
    @ValueSource(strings = {"check", "repair", "backup", "restore"})
    void aFolderIsNoJournal(String what) {
        boolean two = what.equals("backup") || what.equals("restore");
        assertThat(two ? run(new JournalCommand(), what, folder, folder.resolve("copy.db")) : run(new JournalCommand(), what, folder))
                .isEqualTo(2);
        assertThat(said.toString()).startsWith("cupbeam: " + folder + ": is a folder; name a ");
    }

    @Test
    void anythingThatMayNotBeReadIsNamed() {
        assertThat(Cupbeam.explain(new AccessDeniedException("evening.vcd"), new PrintWriter(said, true))).isEqualTo(1);
        assertThat(said).hasToString("cupbeam: evening.vcd: may not be read or written; see its permissions, and its folder's\n");
    }

    @Test
    void commissioningIsRefusedAtItsStartWhereTheRigFileCouldNotBeWrittenAtItsEnd() {
        assertThat(run(new CommissionCommand(), "--practice", "--rig", folder)).isEqualTo(2);
        assertThat(run(new CommissionCommand(), "--practice", "--rig", folder.resolve("not/rig.toml"))).isEqualTo(2);
        assertThat(said).hasToString("cupbeam: " + folder + ": is a folder; name a rig file in it\n"
                + "cupbeam: " + folder.resolve("not/rig.toml") + ": there is no folder " + folder.resolve("not")
                + "; make it, or name another file with --rig\n");
    }

    @Test
    void tryingARigFileOutLeavesNothingBehindAndNothingChanged() throws Exception {
        String before = Files.readString(rig);
        RigDraft.tryOut(rig);
        RigDraft.tryOut(folder.resolve("other.toml"));
        assertThat(rig).hasContent(before);
        try (var files = Files.list(folder)) {
            assertThat(files).containsExactly(rig);
        }
    }
}

package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.cupbeam.studio.web.access.StaffPin;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class PinCommandTest {
    @TempDir
    private Path folder;
    private final StringWriter said = new StringWriter();

    @Test
    void setsThePinFromStandardInputAndChangesOneThatWasForgotten() {
        assertThat(run("739205\n", "pin", "--data", folder.toString())).isZero();
        assertThat(pin().is("739205")).isTrue();
        assertThat(said.toString()).contains("The staff PIN is set").doesNotContain("739205");

        assertThat(run("850316\n", "pin", "--data", folder.toString())).isZero();
        assertThat(pin().is("850316")).isTrue();
        assertThat(pin().is("739205")).isFalse();
    }

    @Test
    void refusesOneThatIsEasilyGuessedAndAMissingFolder() {
        assertThat(run("123456\n", "pin", "--data", folder.toString())).isEqualTo(2);
        assertThat(said.toString()).contains("the first one that anybody would try");
        assertThat(run("", "pin", "--data", folder.toString())).isEqualTo(2);
        assertThat(pin().isSet()).isFalse();
        assertThat(run("739205\n", "pin", "--data", folder.resolve("none").toString())).isEqualTo(2);
        assertThat(said.toString()).contains("There is no folder").contains("--data");
        assertThat(folder.resolve("none")).doesNotExist();
    }

    @Test
    void removesIt() {
        pin().set("739205");

        assertThat(run("", "pin", "--remove", "--data", folder.toString())).isZero();
        assertThat(pin().isSet()).isFalse();
        assertThat(run("", "pin", "--remove", "--data", folder.toString())).isZero();
        assertThat(said.toString()).contains("There was no staff PIN.");
    }

    @Test
    void othersAreLetInOnlyOnceThereIsAPin() {
        String data = folder.resolve("data").toString();

        assertThat(run("", "--listen", "0.0.0.0", "--port", "0", "--mqtt-port", "0", "--data", data)).isEqualTo(2);
        assertThat(said.toString()).contains("no staff PIN is set").contains("pin --data").contains("/sign-in")
                .doesNotContain("\tat ");
    }

    @Test
    void saysThatAnAddressIsNotOfThisComputer() {
        String data = folder.resolve("data").toString();
        for (String address : new String[] {"192.0.2.1", "no address"}) {
            said.getBuffer().setLength(0);
            assertThat(run("", "--listen", address, "--port", "0", "--mqtt-port", "0", "--data", data)).isEqualTo(2);
            assertThat(said.toString()).contains("this computer has no address " + address).contains("--listen");
        }
    }

    @Test
    void aProxyPassesOthersInSoThereHasToBeAPin() {
        String data = folder.resolve("data").toString();

        assertThat(run("", "--proxy", "127.0.0.1", "--port", "0", "--mqtt-port", "0", "--data", data)).isEqualTo(2);
        assertThat(said.toString()).contains("no staff PIN is set").contains("--proxy");
        assertThat(run("", "--proxy", "studio.example", "--port", "0", "--mqtt-port", "0", "--data", data)).isEqualTo(2);
        assertThat(said.toString()).contains("--proxy: studio.example: is no address of a proxy");
    }

    @Test
    void whatTheDataFolderHoldsIsItsOwnersAlone() throws Exception {
        Path data = folder.resolve("new").resolve("data");
        try (DataFolder claimed = DataFolder.claim(data)) {
            assertThat(Files.getPosixFilePermissions(claimed.path())).hasSize(3)
                    .allMatch(each -> each.name().startsWith("OWNER_"));
        }
    }

    private int run(String input, String... arguments) {
        InputStream before = System.in;
        System.setIn(new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8)));
        try {
            PrintWriter to = new PrintWriter(said, true);
            return new CommandLine(new Studio()).setOut(to).setErr(to).execute(arguments);
        } finally {
            System.setIn(before);
        }
    }

    private StaffPin pin() {
        return new StaffPin(folder.resolve("staff-pin"));
    }
}

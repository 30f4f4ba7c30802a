package org.cupbeam.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Scope;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.staff.Account;
import org.cupbeam.studio.store.staff.Role;
import org.cupbeam.studio.store.staff.StaffBook;
import org.cupbeam.studio.web.access.StaffPin;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** The command for whoever sits at the studio computer, also while a host has the store open. */
class StaffCommandTest {
    @TempDir
    private Path folder;
    private final StringWriter said = new StringWriter();

    @Test
    void givesAnotherSecretWhileAHostHasTheStore() {
        try (Store host = Store.open(Database.file(folder.resolve("studio.db")))) {
            host.write(h -> StaffBook.add(h, "Ada", "forgotten", Role.OWNER, Scope.ALL, "Kim", 1));
            host.write(h -> StaffBook.add(h, "Olga", "known", Role.OWNER, Scope.of(List.of("quay", "mill")), "Ada", 2));

            assertThat(run("", "staff", "--data", folder.toString())).isZero();
            assertThat(said.toString()).contains("Ada: owner, all studios").contains("Olga: owner, mill quay").doesNotContain("forgotten");
            assertThat(run("fresh-912837\n", "staff", "--secret", "ada", "--data", folder.toString())).isZero();

            String hash = host.read(h -> StaffBook.named(h, "Ada")).orElseThrow().secret();
            assertThat(StaffPin.quick(folder.resolve("p")).secrets().is("fresh-912837", hash)).isTrue();
            assertThat(host.write(h -> StaffBook.add(h, "Bea", "x", Role.DESK, Scope.ALL, "Ada", 3)).id()).as("the host writes on").isEqualTo(3);
        }
    }

    @Test
    void takesEverybodyAwaySoThatThePinOpensAgain() {
        try (Store host = Store.open(Database.file(folder.resolve("studio.db")))) {
            host.write(h -> StaffBook.add(h, "Ada", "forgotten", Role.OWNER, Scope.ALL, "Kim", 1));

            assertThat(run("", "staff", "--clear", "--data", folder.toString())).isZero();
            assertThat(host.<List<Account>>read(StaffBook::all)).isEmpty();
            assertThat(said.toString()).contains("The PIN opens again.");
        }
    }

    @Test
    void whatMakesNoSenseIsRefusedInWordsAndMakesNothing() {
        assertThat(run("", "staff", "--data", folder.resolve("none").toString())).isEqualTo(2);
        assertThat(said.toString()).contains("there is no folder");
        assertThat(run("", "staff", "--data", folder.toString())).isEqualTo(2);
        assertThat(said.toString()).contains("is not there, or is not of this version");
        assertThat(folder.resolve("studio.db")).doesNotExist();
        Store.open(Database.file(folder.resolve("studio.db"))).close();
        assertThat(run("fresh-912837\n", "staff", "--secret", "Eve", "--data", folder.toString())).isEqualTo(2);
        assertThat(said.toString()).contains("Nobody signs in as \"Eve\"");
    }

    private int run(String input, String... arguments) {
        InputStream before = System.in;
        System.setIn(new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8)));
        try {
            return new CommandLine(new Studio()).setOut(new PrintWriter(said, true)).setErr(new PrintWriter(said, true)).execute(arguments);
        } finally {
            System.setIn(before);
        }
    }
}

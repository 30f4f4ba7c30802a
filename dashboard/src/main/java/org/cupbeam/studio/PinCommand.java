package org.cupbeam.studio;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.cupbeam.studio.web.access.StaffPin;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Sets the staff PIN anew, for whoever sits at the machine and may write its data. A running studio takes notice. */
@Command(name = "pin", mixinStandardHelpOptions = true, description = {
    "Sets the staff PIN, also one that was forgotten: asks for it, or takes a line of standard input.",
    "Ends all sign-ins. A studio that runs need not be stopped."})
final class PinCommand implements Callable<Integer> {
    @Option(names = "--data", paramLabel = "FOLDER", defaultValue = "cupbeam-data",
            description = "folder of all data (default: ./${DEFAULT-VALUE})")
    private Path data;

    @Option(names = "--remove", description = "have no PIN any more: pages are for this computer alone, then")
    private boolean remove;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        try {
            if (!Files.isDirectory(data)) {
                throw new IllegalArgumentException("There is no folder " + data.toAbsolutePath().normalize()
                        + ": name the studio's with --data.");
            }
            StaffPin pin = Door.here(0, data).pin();
            if (remove) {
                say(pin.forget() ? "The staff PIN is gone. Pages are for this computer alone until another is set."
                        : "There was no staff PIN.");
                return 0;
            }
            pin.set(NewSecret.ask("staff PIN"));
            say("The staff PIN is set. All have to sign in with it now.");
            return 0;
        } catch (IllegalArgumentException e) {
            spec.commandLine().getErr().println(e.getMessage());
            return 2;
        }
    }

    private void say(String line) {
        spec.commandLine().getOut().println(line);
        spec.commandLine().getOut().flush();
    }
}

package org.cupbeam.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import org.cupbeam.log.LogForm;
import org.cupbeam.service.LastWord;

/** Where the program begins. */
public final class Cupbeam {
    private Cupbeam() {
    }

    public static void main(String[] arguments) {
        LogForm.choose();
        LastWord.ofThisProcess();
        LaneCommand lane = QuickStart.lane(arguments);
        System.exit(lane == null ? Commands.execute(arguments) : run(lane));
    }

    private static int run(LaneCommand lane) {
        try {
            return lane.call();
        } catch (Exception failure) {
            return explain(failure, new PrintWriter(System.err, true));
        }
    }

    /** Says in a line what went wrong. A stack trace is for our own faults alone. */
    static int explain(Exception failure, PrintWriter err) {
        if (failure instanceof Refusal) {
            err.println("cupbeam: " + failure.getMessage());
            return 2;
        }
        if (failure instanceof NoSuchFileException missing) {
            err.println("cupbeam: " + missing.getFile() + ": there is no such file");
            return 2;
        }
        if (failure instanceof AccessDeniedException barred) {
            err.println("cupbeam: " + barred.getFile() + ": may not be read or written; see its permissions, and its folder's");
            return 1;
        }
        if (failure instanceof IOException || failure instanceof UncheckedIOException) {
            err.println("cupbeam: " + failure.getMessage());
            return 1;
        }
        err.println("cupbeam: a fault of its own; please report it with what follows");
        failure.printStackTrace(err);
        return 1;
    }
}

package org.cupbeam.log;

import java.io.PrintStream;
import java.time.InstantSource;
import java.util.Map;
import org.cupbeam.rig.file.Shown;

/** The form of the log on standard error, as this process's environment wants it. */
public final class LogForm {
    private static final String WANTED = "CUPBEAM_LOG";
    private static final int SHOWN_MAX = 40;

    private LogForm() {
    }

    /** Has standard error written so from now on: once, before anything is logged. */
    public static void choose() {
        System.setErr(of(System.getenv(), System.err, InstantSource.system()));
    }

    /**
     * As JSON where {@code CUPBEAM_LOG} is {@code json}; with levels for the system's journal where that reads along; else plain.
     *
     * @param plain as it is; told of a form that there is none of
     */
    static PrintStream of(Map<String, String> environment, PrintStream plain, InstantSource clock) {
        String wanted = environment.getOrDefault(WANTED, "");
        if (wanted.equals("json")) {
            return new JsonLines(plain, clock);
        }
        PrintStream form = environment.containsKey("JOURNAL_STREAM") ? new LevelledLines(plain) : plain;
        if (!wanted.isEmpty()) {
            form.println("cupbeam: " + WANTED + ": \"" + Shown.of(wanted, SHOWN_MAX)
                    + "\" is no form of the log; json would do, or leave it out for lines to read");
        }
        return form;
    }
}

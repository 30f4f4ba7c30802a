package org.cupbeam.service;

import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/**
 * Lines of the log, each behind the level that the system's journal reads off it ({@code sd-daemon(3)}), so that
 * {@code journalctl -p warning} shows what it should. A line that has no level of its own, as those of a stack trace, has
 * that of the line before.
 */
public final class LevelledLines extends PrintStream {
    private static final Map<String, String> LEVELS =
            Map.of("ERROR", "<3>", "WARN", "<4>", "INFO", "<6>", "DEBUG", "<7>", "TRACE", "<7>");
    private static final String NOTICE = "<5>";

    private String level = NOTICE;

    LevelledLines(OutputStream to) {
        super(to, true, StandardCharsets.UTF_8);
    }

    /** Has standard error written so, where it goes to the system's journal and is not wanted otherwise. */
    public static void whereTheJournalReads() {
        if (!JsonLines.whereWanted() && System.getenv("JOURNAL_STREAM") != null) {
            System.setErr(new LevelledLines(System.err));
        }
    }

    @Override
    public void println(String line) {
        int end = line.indexOf(' ');
        String own = end < 0 ? null : LEVELS.get(line.substring(0, end));
        boolean goesOn = line.startsWith("\t") || line.startsWith("Caused by:");
        level = own != null ? own : goesOn ? level : NOTICE;
        super.println(level + (own == null ? line : line.substring(end + 1)));
    }

    @Override
    public void println(Object line) {
        String text = String.valueOf(line);
        super.println((text.isEmpty() ? "" : level) + text);
    }
}

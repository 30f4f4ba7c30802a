package org.cupbeam.log;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A line of the log, read for what it says.
 *
 * @param level of the logger; {@link Level#NOTICE} where no logger wrote it
 * @param from  whose line it is; empty where no logger wrote it
 * @param said  the rest of it
 * @param more  whether it goes on with the line before, as a stack trace does, and has its level and its origin
 */
record Line(Level level, String from, String said, boolean more) {
    /** As SLF4J's simple logger lays a line out, with or without the time and the thread before the level. */
    private static final Pattern LOGGED = Pattern.compile(
            "(?:[0-9:.TZ+-]+ )?(?:\\[[^]]*\\] )?(ERROR|WARN|INFO|DEBUG|TRACE) (\\S+) - (.*)", Pattern.DOTALL);
    /** Before the first line. */
    static final Line NONE = new Line(Level.NOTICE, "", "", false);

    /** The levels of loggers, and what a command says to a person. */
    enum Level { ERROR, WARN, NOTICE, INFO, DEBUG, TRACE }

    /** The line that comes after this one. */
    Line next(String text) {
        Matcher logged = LOGGED.matcher(text);
        if (logged.matches()) {
            return new Line(Level.valueOf(logged.group(1)), logged.group(2), logged.group(3), false);
        }
        return text.startsWith("\t") || text.startsWith("Caused by:") ? goingOn(text) : new Line(Level.NOTICE, "", text, false);
    }

    /** More of this line. */
    Line goingOn(String text) {
        return new Line(level, from, text, true);
    }
}

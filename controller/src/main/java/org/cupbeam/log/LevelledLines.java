package org.cupbeam.log;

import java.io.OutputStream;
import java.util.stream.Collectors;

/**
 * Lines of the log, each behind the level that the system's journal reads off it ({@code sd-daemon(3)}), so that
 * {@code journalctl -p warning} shows what it should. Each line of a text of several has it, since the journal takes each for
 * itself; time and thread are left out, since it has a time of its own.
 */
final class LevelledLines extends LaidOut {
    LevelledLines(OutputStream to) {
        super(to);
    }

    @Override
    String layOut(Line line) {
        String text = line.from().isEmpty() || line.more() ? line.said() : line.from() + " - " + line.said();
        String level = "<" + priority(line.level()) + ">";
        return text.lines().map(each -> level + each + "\n").collect(Collectors.joining());
    }

    private static int priority(Line.Level level) {
        return switch (level) {
            case ERROR -> 3;
            case WARN -> 4;
            case NOTICE -> 5;
            case INFO -> 6;
            case DEBUG, TRACE -> 7;
        };
    }
}

package org.cupbeam.log;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/**
 * Lines of the log that are laid out anew, each written as a whole. A logger's line is taken as it is printed, even where it
 * is several lines of text; whatever else is written is taken line by line, and stays here until its line ends.
 */
abstract class LaidOut extends PrintStream {
    /** What has no end by then is taken for a line. */
    private static final int BEGUN_MAX = 1 << 16;

    private final ByteArrayOutputStream begun = new ByteArrayOutputStream();
    private Line last = Line.NONE;

    LaidOut(OutputStream to) {
        super(to, true, StandardCharsets.UTF_8);
    }

    /** A line as it is to be written, its end included; empty where it is to be left out. */
    abstract String layOut(Line line);

    @Override
    public final synchronized void println(String text) {
        take(last.next(String.valueOf(text)));
    }

    /** Stack traces come so. */
    @Override
    public final synchronized void println(Object part) {
        take(last.goingOn(String.valueOf(part)));
    }

    @Override
    public final synchronized void write(int each) {
        if (each == '\n' || begun.size() == BEGUN_MAX) {
            String line = begun.toString(StandardCharsets.UTF_8);
            begun.reset();
            println(line.endsWith("\r") ? line.substring(0, line.length() - 1) : line);
        }
        if (each != '\n') {
            begun.write(each);
        }
    }

    @Override
    public final synchronized void write(byte[] bytes, int from, int length) {
        for (int i = from; i < from + length; i++) {
            write(bytes[i]);
        }
    }

    private void take(Line line) {
        last = line;
        try {
            out.write(layOut(line).getBytes(StandardCharsets.UTF_8));
            out.flush();
        } catch (IOException nobodyReads) {
            setError();
        }
    }
}

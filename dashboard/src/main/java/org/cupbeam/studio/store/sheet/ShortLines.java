package org.cupbeam.studio.store.sheet;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/** A table's bytes, of which no line is without end: whoever reads a table keeps a whole line, its columns' names above all. */
final class ShortLines extends FilterInputStream {
    /** Far more than a row of {@link Cells#MOST_COLUMNS} has in practice. */
    static final int LONGEST_BYTES = 64 * 1024;

    /** A line longer than that. */
    static final class TooLong extends IOException {
        private static final long serialVersionUID = 1L;

        TooLong() {
            super("a line of more than " + LONGEST_BYTES + " bytes");
        }
    }

    private int length;

    ShortLines(InputStream in) {
        super(in);
    }

    @Override
    public int read() throws IOException {
        int each = in.read();
        count((byte) each);
        return each;
    }

    @Override
    public int read(byte[] bytes, int from, int most) throws IOException {
        int count = in.read(bytes, from, most);
        for (int i = 0; i < count; i++) {
            count(bytes[from + i]);
        }
        return count;
    }

    private void count(byte each) throws TooLong {
        length = each == '\n' || each == '\r' ? 0 : length + 1;
        if (length > LONGEST_BYTES) {
            throw new TooLong();
        }
    }
}

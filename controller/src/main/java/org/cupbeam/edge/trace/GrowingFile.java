package org.cupbeam.edge.trace;

import java.io.FileInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.nio.file.Path;

/** A file that another program still writes to: its end is only where it has got to. Shrinking is an error. */
final class GrowingFile extends FilterInputStream {
    private final FileInputStream file;
    private final Path path;

    GrowingFile(Path path) throws IOException {
        this(new FileInputStream(path.toFile()), path);
    }

    private GrowingFile(FileInputStream file, Path path) {
        super(file);
        this.file = file;
        this.path = path;
    }

    @Override
    public int read(byte[] bytes, int offset, int length) throws IOException {
        int count = super.read(bytes, offset, length);
        if (count < 0 && file.getChannel().size() < file.getChannel().position()) {
            throw new IOException(path + " has become shorter while it was followed; follow the new file from its start");
        }
        return count;
    }
}

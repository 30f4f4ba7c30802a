package org.cupbeam.rig.file;

/**
 * One thing that is wrong in a file.
 *
 * @param file   as it was named
 * @param line   from 1; 0 where it is the whole file
 * @param key    dotted, as {@code beam.gpio}; empty where no key is concerned
 * @param wrong  what is wrong
 * @param remedy what would do; empty where the first says it
 */
public record Problem(String file, int line, String key, String wrong, String remedy) {
    @Override
    public String toString() {
        return file + (line > 0 ? ":" + line : "") + ": " + (key.isEmpty() ? "" : key + ": ") + wrong
                + (remedy.isEmpty() ? "" : "; " + remedy);
    }
}

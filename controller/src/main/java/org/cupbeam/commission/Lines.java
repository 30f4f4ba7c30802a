package org.cupbeam.commission;

import java.util.List;

/** The lines that are watched: their numbers, their levels, and what hangs on them as far as it is known. */
final class Lines {
    private final List<Integer> gpios;
    private final boolean[] high;
    private final boolean[] rest;
    private final boolean[] restless;
    private final String[] names;

    Lines(List<Integer> gpios) {
        this.gpios = List.copyOf(gpios);
        high = new boolean[gpios.size()];
        rest = new boolean[gpios.size()];
        restless = new boolean[gpios.size()];
        names = new String[gpios.size()];
    }

    int count() {
        return high.length;
    }

    int gpio(int line) {
        return gpios.get(line);
    }

    void level(int line, boolean now) {
        high[line] = now;
    }

    boolean isHigh(int line) {
        return high[line];
    }

    /** The level at which it was when nobody touched anything. */
    boolean restsHigh(int line) {
        return rest[line];
    }

    /** Nobody touches anything now: the levels are those of rest. */
    void atRest() {
        System.arraycopy(high, 0, rest, 0, high.length);
    }

    /** Whether it turns by itself, and so is left aside. */
    boolean isRestless(int line) {
        return restless[line];
    }

    void leaveAside(int line) {
        restless[line] = true;
    }

    /** What hangs on it; null where that is not known. */
    String name(int line) {
        return names[line];
    }

    void name(int line, String name) {
        names[line] = name;
    }

    /** For an eye. */
    String called(int line) {
        return names[line] == null ? "GPIO " + gpio(line) : names[line] + " (GPIO " + gpio(line) + ")";
    }
}

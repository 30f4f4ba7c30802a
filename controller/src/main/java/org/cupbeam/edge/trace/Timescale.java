package org.cupbeam.edge.trace;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A trace's unit of time, as a power of ten of a nanosecond: {@code 10 us} is 4, {@code 1 ps} is -3.
 *
 * @param exponent from -6 to 11
 */
record Timescale(int exponent) {
    private static final List<String> UNITS = List.of("fs", "ps", "ns", "us", "ms", "s");
    private static final Pattern FORM = Pattern.compile("(1|10|100)(fs|ps|ns|us|ms|s)");

    /** Reads what stands between {@code $timescale} and {@code $end}, without blanks; null where it is none. */
    static Timescale of(String text) {
        Matcher form = FORM.matcher(text);
        if (!form.matches()) {
            return null;
        }
        int zeros = form.group(1).length() - 1;
        return new Timescale(3 * (UNITS.indexOf(form.group(2)) - UNITS.indexOf("ns")) + zeros);
    }
}

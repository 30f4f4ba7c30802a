package org.cupbeam.bench;

import java.util.Arrays;

/** Durations of one thing, measured again and again, ns. */
final class Samples {
    private long[] ns = new long[1024];
    private int count;

    void add(long durationNs) {
        if (count == ns.length) {
            ns = Arrays.copyOf(ns, 2 * count);
        }
        ns[count++] = durationNs;
    }

    int count() {
        return count;
    }

    /** The least of them that is not less than this share of them all, ms; NaN where there are none. */
    double ms(double share) {
        long[] sorted = Arrays.copyOf(ns, count);
        Arrays.sort(sorted);
        return count == 0 ? Double.NaN : sorted[Math.max(0, (int) Math.ceil(share * count) - 1)] / 1e6;
    }

    /** Of a table whose columns are the least, the median, the 90th and 99th percentile, and the most, ms. */
    String row(String what) {
        return String.format("%-44s %7d %9.3f %9.3f %9.3f %9.3f %9.3f", what, count, ms(0), ms(0.5), ms(0.9), ms(0.99),
                ms(1));
    }

    static String head() {
        return String.format("%-44s %7s %9s %9s %9s %9s %9s", "ms", "times", "least", "median", "p90", "p99", "most");
    }
}

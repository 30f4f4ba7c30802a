package org.cupbeam.studio.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;

/** When each event of a lane was published, and how long it was until a score that includes it came to one who watches. */
final class Arrivals {
    private final SortedMap<Long, Long> waiting = new TreeMap<>();
    private final List<Double> ms = new ArrayList<>();

    synchronized void published(long sequence, long atNs) {
        waiting.put(sequence, atNs);
    }

    /** A score came; a board that was shown a later score has seen the earlier too. */
    synchronized void came(long sequence, long atNs) {
        SortedMap<Long, Long> seen = waiting.headMap(sequence + 1);
        seen.values().forEach(publishedNs -> ms.add((atNs - publishedNs) / 1e6));
        seen.clear();
    }

    synchronized int missing() {
        return waiting.size();
    }

    /** One line of percentiles over all, and how many never came. */
    static String summary(List<Arrivals> all) {
        double[] sorted = all.stream().flatMap(each -> each.copy().stream()).mapToDouble(Double::doubleValue).sorted().toArray();
        int missing = all.stream().mapToInt(Arrivals::missing).sum();
        if (sorted.length == 0) {
            return "none came, " + missing + " did not";
        }
        return String.format(Locale.ROOT, "n %,d, p50 %.1f, p95 %.1f, p99 %.1f, max %.1f ms; above 100 ms: %.2f %%; never came: %d",
                sorted.length, at(sorted, 0.5), at(sorted, 0.95), at(sorted, 0.99), sorted[sorted.length - 1],
                100.0 * Arrays.stream(sorted).filter(each -> each > 100).count() / sorted.length, missing);
    }

    /** Nearest rank. */
    private static double at(double[] sorted, double part) {
        return sorted[(int) Math.ceil(part * sorted.length) - 1];
    }

    /** All, in ms. */
    List<Double> all() {
        return copy();
    }

    private synchronized List<Double> copy() {
        return List.copyOf(ms);
    }
}

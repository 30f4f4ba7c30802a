package org.cupbeam.board;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Assumptions;

/**
 * Edges that were played on the board's lines, and what its kernel took of them.
 *
 * @param edges      with the times at which they should be, from any zero
 * @param taken      with the times at which the kernel took them, from another
 * @param comeToSame whether a replay of these makes the same attempts as one of those
 */
record Played(List<Edge> edges, List<Edge> taken, boolean comeToSame) {
    /** A ball's pulse is over after 28 ms. */
    private static final long HELD_UP_NS = 10_000_000;

    /** Of edges that make no attempts. */
    Played(List<Edge> edges, List<Edge> taken) {
        this(edges, taken, true);
    }

    /**
     * Whether the kernel took an edge otherwise than it should be, or so late that it comes to something else or by more than 10 ms, for
     * which this computer or the emulator was held up: the kernel's interrupt waits for no program of ours. What the lane makes of it says
     * nothing.
     */
    boolean isHeldUp() {
        return !isWhole() || !comeToSame || spreadNs() > HELD_UP_NS;
    }

    /** Leaves the test out where the board was held up each time: nothing of it is shown. */
    void assumeNotHeldUp() {
        Assumptions.assumeFalse(isHeldUp(), () -> "this computer or the emulator was held up each time: try again, or on a computer that is "
                + "not virtual; the last time " + this);
    }

    /** Whether each line has its edges, all of them and no more. */
    private boolean isWhole() {
        List<Edge> should = byLine(edges);
        List<Edge> is = byLine(taken);
        boolean whole = should.size() == is.size();
        for (int i = 0; whole && i < should.size(); i++) {
            whole = should.get(i).channel() == is.get(i).channel() && should.get(i).active() == is.get(i).active();
        }
        return whole;
    }

    /** How much later than the earliest the latest was taken, ns; of edges that were taken whole. */
    long spreadNs() {
        long[] offsets = offsets();
        return offsets[offsets.length - 1] - offsets[0];
    }

    /** The share of all that was not farther than this from the middle one, ns; of edges that were taken whole. */
    long deviationNs(double share) {
        long[] offsets = offsets();
        long middle = offsets[offsets.length / 2];
        long[] deviations = Arrays.stream(offsets).map(each -> Math.abs(each - middle)).sorted().toArray();
        return deviations[(int) Math.round(share * (deviations.length - 1))];
    }

    /** In the order of size. */
    private long[] offsets() {
        List<Edge> should = byLine(edges);
        List<Edge> is = byLine(taken);
        long[] offsets = new long[should.size()];
        for (int i = 0; i < offsets.length; i++) {
            offsets[i] = is.get(i).timeNs() - should.get(i).timeNs();
        }
        Arrays.sort(offsets);
        return offsets;
    }

    private static List<Edge> byLine(List<Edge> edges) {
        return edges.stream().sorted(Comparator.comparingInt(Edge::channel).thenComparingLong(Edge::timeNs)).toList();
    }

    @Override
    public String toString() {
        return isWhole() ? String.format(Locale.ROOT, "%d edges taken, the latest %.2f ms later than the earliest, beside when they should be%s",
                edges.size(), spreadNs() * 1e-6, comeToSame ? "" : ", which comes to other attempts")
                : edges.size() + " edges, not taken as they should be: " + taken;
    }
}

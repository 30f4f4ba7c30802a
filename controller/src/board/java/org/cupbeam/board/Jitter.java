package org.cupbeam.board;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** How far the kernel's stamps are from the times at which the lines were driven, as measured; their median is zero. */
final class Jitter {
    /** The kernel may not see two edges of a line that are closer than this: the recipe's figure. */
    private static final long MAY_MERGE_NS = 10_000_000;

    private final long[] offsets;

    /** @param stamped the same edges with the kernel's stamps, from another zero */
    Jitter(List<Pins.Driven> driven, List<Edge> stamped) {
        offsets = new long[driven.size()];
        for (int i = 0; i < offsets.length; i++) {
            offsets[i] = stamped.get(i).timeNs() - driven.get(i).atNs();
        }
        Arrays.sort(offsets);
        long median = offsets[offsets.length / 2];
        for (int i = 0; i < offsets.length; i++) {
            offsets[i] -= median;
        }
    }

    /** The share of all whose distance from the median is at most this, ns. */
    long absoluteNs(double share) {
        long[] sorted = Arrays.stream(offsets).map(Math::abs).sorted().toArray();
        return sorted[(int) Math.round(share * (sorted.length - 1))];
    }

    /** What the kernel might have made of it: each driven time off by one of those measured, what is too close perhaps unseen. */
    List<Edge> of(List<Pins.Driven> driven, Random random) {
        Map<Integer, List<Edge>> lines = new HashMap<>();
        for (Pins.Driven each : driven) {
            List<Edge> line = lines.computeIfAbsent(each.edge().channel(), any -> new ArrayList<>());
            long timeNs = each.atNs() + offsets[random.nextInt(offsets.length)];
            Edge last = line.isEmpty() ? null : line.get(line.size() - 1);
            if (last != null && timeNs - last.timeNs() < MAY_MERGE_NS && random.nextBoolean()) {
                line.remove(line.size() - 1);
            } else {
                line.add(new Edge(each.edge().channel(), each.edge().active(),
                        last == null ? timeNs : Math.max(timeNs, last.timeNs() + 1_000)));
            }
        }
        return lines.values().stream().flatMap(List::stream).sorted(Comparator.comparingLong(Edge::timeNs)).toList();
    }
}

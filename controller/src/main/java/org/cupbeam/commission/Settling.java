package org.cupbeam.commission;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.function.Consumer;

/** The first moments: which level each line rests at, and which lines turn by themselves. */
final class Settling implements Watch {
    private static final long OPENING_NS = 500_000_000;
    private static final long LASTS_NS = 2_000_000_000;
    private static final int RESTLESS_EDGES = 15;

    private final Lines lines;
    private final Collection<Found> known;
    private final Consumer<List<String>> over;
    private final int[] edges;
    private long beganNs = -1;

    /** @param over is told once what is wrong, if anything is */
    Settling(Lines lines, Collection<Found> known, Consumer<List<String>> over) {
        this.lines = lines;
        this.known = known;
        this.over = over;
        edges = new int[lines.count()];
    }

    @Override
    public void edge(int line, boolean high, long timeNs) {
        begin(timeNs);
        if (timeNs - beganNs > OPENING_NS) {
            edges[line]++;
        }
    }

    @Override
    public void settled(long timeNs) {
        begin(timeNs);
        if (timeNs - beganNs >= LASTS_NS) {
            lines.atRest();
            over.accept(troubles());
        }
    }

    private void begin(long timeNs) {
        beganNs = beganNs < 0 ? timeNs : beganNs;
    }

    private List<String> troubles() {
        List<String> troubles = new ArrayList<>();
        for (int line = 0; line < edges.length; line++) {
            if (edges[line] > RESTLESS_EDGES) {
                lines.leaveAside(line);
                troubles.add(lines.called(line) + " turns by itself, " + edges[line] + " times in "
                        + (LASTS_NS - OPENING_NS) / 100_000_000 / 10.0 + " s, and is left aside: its plug or supply is loose,"
                        + " nothing hangs on it, or its lamp points past it");
            }
        }
        for (Found each : known) {
            if (!lines.isRestless(each.line()) && each.isActive(lines.isHigh(each.line()))) {
                troubles.add(neverCleared(each));
            }
        }
        return troubles;
    }

    private static String neverCleared(Found each) {
        return each.sensor().name() + switch (each.sensor().kind()) {
            case BEAM -> " never cleared: misaligned or unplugged (or something stands in it)";
            case CUP -> " never cleared: a ball lies in it, it is dirty, or it is unplugged";
            case STRIKE, PEDAL -> " is pressed all the time: its cable is shorted, or active is the wrong way round";
        };
    }
}

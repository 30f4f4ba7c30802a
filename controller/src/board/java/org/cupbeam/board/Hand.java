package org.cupbeam.board;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.cupbeam.drill.Drill;
import org.cupbeam.rig.Rig;

/** Plays on the board's lines, and looks what its kernel took. */
final class Hand {
    private static final int TAKEN_WITHIN_MS = 100;

    private final Pins pins;
    private final Kernel kernel;
    private final Rig rig;
    private final Drill drill;
    private final Report report;
    private Played last;
    private long endedNs;
    private int plays;
    private int heldUp;

    Hand(Pins pins, Kernel kernel, Rig rig, Drill drill, Report report) {
        this.pins = pins;
        this.kernel = kernel;
        this.rig = rig;
        this.drill = drill;
        this.report = report;
    }

    /** Plays these in real time. Where they were held up, which is reported, they may be played again. */
    Played play(List<Edge> edges) throws IOException, InterruptedException {
        kernel.forget();
        List<Pins.Driven> driven = pins.play(edges);
        endedNs = driven.get(driven.size() - 1).atNs();
        TimeUnit.MILLISECONDS.sleep(TAKEN_WITHIN_MS);
        List<Edge> taken = kernel.taken();
        last = new Played(edges, taken, Told.same(rig, drill, taken, edges));
        plays++;
        if (last.isHeldUp()) {
            heldUp++;
            report.line("held up: %s", last);
        }
        return last;
    }

    /** When the last edge that was played was driven, by {@link System#nanoTime()}. */
    long endedNs() {
        return endedNs;
    }

    /** How often it was. */
    void tell() throws IOException {
        report.line("played %d times%s, held up %d times; the last time %s", plays, pins.hasty() ? " before all else" : "", heldUp, last);
    }
}

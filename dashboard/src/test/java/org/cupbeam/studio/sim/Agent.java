package org.cupbeam.studio.sim;

import java.util.function.LongSupplier;

/** One of the program's threads: takes a step now and then, for as long as its process lives. */
final class Agent {
    /** What a step gives back that did something: more may be waiting. */
    static final long WORKED = -1;

    final String name;
    /** Whether its steps may write to the disk. */
    final boolean commits;
    private final Agenda agenda;
    private final Machine on;
    private final Dice dice;
    private final LongSupplier step;
    private long plannedNs = Long.MAX_VALUE;
    private int plan;
    private boolean dead;
    private boolean within;

    /** @param step gives how long to wait before the next, ns, or {@link #WORKED} */
    Agent(String name, boolean commits, Machine on, Agenda agenda, Dice dice, LongSupplier step) {
        this.name = name;
        this.commits = commits;
        this.on = on;
        this.agenda = agenda;
        this.dice = dice;
        this.step = step;
    }

    /** Has it take a step within this time. */
    void within(long ns) {
        long atNs = agenda.nowNs() + ns;
        if (atNs < plannedNs && !dead && !within) {
            int mine = ++plan;
            plannedNs = atNs;
            agenda.after(ns, () -> {
                if (mine == plan && !dead) {
                    run();
                }
            });
        }
    }

    /** There is something to do. */
    void wake() {
        within(dice.upToNs(2 * Agenda.MS));
    }

    void die() {
        dead = true;
    }

    private void run() {
        plannedNs = Long.MAX_VALUE;
        within = true; // while it waits in its step for something, the others' steps must not take its next
        long waitNs = on.step(this, step);
        within = false;
        within(waitNs == WORKED ? dice.upToNs(Agenda.MS) : waitNs);
    }
}

package org.cupbeam.studio.sim;

import java.util.ArrayList;
import java.util.List;
import java.util.function.LongSupplier;

/** A computer with one process on it, its disk, and its end when the dice say so: between any two steps, or within a commit. */
abstract class Machine {
    /** How it ends. */
    enum End {
        /** The process alone: the system writes what it was given, and tells the network. */
        KILLED,
        /** The whole machine, in silence. */
        POWER
    }

    /** When it ends. */
    enum Moment { NOW, AFTER_NEXT_WORK, IN_NEXT_COMMIT }

    final String name;
    final Agenda agenda;
    final Dice dice;
    final Disk disk;
    private final List<Agent> agents = new ArrayList<>();
    private boolean on;
    private Moment doom;
    private End doomedBy;
    private Agent doomedAfter;
    private int ends;

    Machine(String name, Agenda agenda, Dice dice, Disk disk) {
        this.name = name;
        this.agenda = agenda;
        this.dice = dice;
        this.disk = disk;
    }

    /** Begins a process. */
    abstract void start();

    /** Lets go of the process's files and connections, which is all that it had of the world. */
    abstract void perish(End how, boolean withinStep);

    boolean isOn() {
        return on;
    }

    int ends() {
        return ends;
    }

    Agent agent(String its, boolean commits, LongSupplier step) {
        Agent agent = new Agent(name + "." + its, commits, this, agenda, dice.others(), step);
        agents.add(agent);
        return agent;
    }

    void switchOn(boolean power) {
        if (!on) {
            on = true;
            agenda.note(name + " on");
            if (power) {
                powered();
            }
            start();
        }
    }

    /** The machine itself has started, and not only the process. */
    void powered() {
    }

    /** Plans its end; it comes back by itself some time after it. */
    void end(Moment when, End how) {
        doom = when;
        doomedBy = how;
        doomedAfter = agents.isEmpty() || when != Moment.AFTER_NEXT_WORK ? null : dice.one(agents);
        if (when == Moment.NOW && on) {
            crash(how, disk.synced(), false);
        }
    }

    void callOffEnd() {
        doom = null;
    }

    /** A step of one of its threads, which may be its last. */
    long step(Agent agent, LongSupplier step) {
        Disk.Image before = doom == Moment.IN_NEXT_COMMIT && agent.commits ? disk.image() : null;
        int life = ends;
        long waitNs;
        try {
            waitNs = step.getAsLong();
        } catch (PowerCut gone) {
            return 0;
        }
        if (life == ends && waitNs == Agent.WORKED) {
            agenda.note(agent.name);
        }
        if (life == ends && doom != null) {
            strike(agent, before, waitNs == Agent.WORKED);
        }
        return waitNs;
    }

    /** Ends it for good. */
    void close() {
        if (on) {
            on = false;
            agents.forEach(Agent::die);
            perish(End.KILLED, false);
        }
    }

    private void strike(Agent agent, Disk.Image before, boolean worked) {
        if (before != null) {
            Disk.Image after = disk.image();
            if (!before.same(after)) {
                crash(End.POWER, Disk.torn(before, after, dice), true);
            }
        } else if (doom == Moment.AFTER_NEXT_WORK && worked && agent == doomedAfter) {
            crash(doomedBy, doomedBy == End.POWER ? disk.synced() : disk.image(), false);
        }
    }

    private void crash(End how, Disk.Image left, boolean withinStep) {
        agenda.note(name + " " + how);
        on = false;
        doom = null;
        ends++;
        agents.forEach(Agent::die);
        agents.clear();
        perish(how, withinStep);
        disk.restore(left);
        agenda.after(100 * Agenda.MS + dice.upToNs(20 * Agenda.S), () -> switchOn(how == End.POWER));
    }
}

package org.cupbeam.studio.sim;

import java.util.LinkedHashSet;
import java.util.Set;

/** What lies between the clients and the broker. */
final class Network {
    private final Agenda agenda;
    private final Dice dice;
    private final long slownessNs;
    private final Set<Call> calls = new LinkedHashSet<>();

    /** @param slownessNs how late a packet is at most, ns */
    Network(Agenda agenda, Dice dice, long slownessNs) {
        this.agenda = agenda;
        this.dice = dice;
        this.slownessNs = slownessNs;
    }

    Agenda agenda() {
        return agenda;
    }

    /** Those that the broker has open. */
    Set<Call> calls() {
        return calls;
    }

    /** When a packet that is sent now arrives. */
    long arrivalNs() {
        return agenda.nowNs() + 50_000 + dice.upToNs(slownessNs);
    }
}

package org.cupbeam.studio.sim;

import java.util.ArrayList;
import java.util.List;

/** Brings about what the weather says, until it is told to stop. */
final class Faults {
    private static final int ENDS_MAX = 12;
    private final Agenda agenda;
    private final Dice dice;
    private final Broker broker;
    private final Network network;
    private final HostMachine host;
    private final List<LaneMachine> lanes;
    private boolean over;

    Faults(Agenda agenda, Dice dice, Broker broker, Network network, HostMachine host, List<LaneMachine> lanes) {
        this.agenda = agenda;
        this.dice = dice;
        this.broker = broker;
        this.network = network;
        this.host = host;
        this.lanes = List.copyOf(lanes);
    }

    void begin(Weather weather) {
        for (LaneMachine lane : lanes) {
            repeat(weather.laneEnds(), () -> end(lane));
            repeat(weather.jumps(), () -> jump(lane));
        }
        repeat(weather.hostEnds(), () -> end(host));
        repeat(weather.jumps(), () -> host.jumps(farOff()));
        repeat(weather.brokerEnds(), this::endBroker);
        repeat(weather.cuts(), this::cut);
    }

    /** No more of them; what is broken is mended. */
    void stop() {
        over = true;
        host.callOffEnd();
        lanes.forEach(Machine::callOffEnd);
        broker.calmDown();
        if (!broker.isUp()) {
            broker.start();
        }
    }

    private void repeat(long meanNs, Runnable fault) {
        if (meanNs > 0 && !over) {
            agenda.after(dice.aroundNs(meanNs), () -> {
                if (!over) {
                    fault.run();
                    repeat(meanNs, fault);
                }
            });
        }
    }

    private void end(Machine machine) {
        if (machine.isOn() && machine.ends() < ENDS_MAX) {
            machine.end(dice.one(List.of(Machine.Moment.values())), dice.one(List.of(Machine.End.values())));
        }
    }

    private void endBroker() {
        if (broker.isUp()) {
            boolean forgets = dice.chance(0.6);
            agenda.note("broker ends, forgets: " + forgets);
            broker.stop(forgets);
            agenda.after(dice.upToNs(20 * Agenda.S), broker::start);
        }
    }

    private void cut() {
        if (!network.calls().isEmpty()) {
            agenda.note("cut");
            dice.one(new ArrayList<>(network.calls())).breakNow(dice);
        }
    }

    /** Somebody sets the clock, or a program that keeps it does: an hour back, a day on, a second's leap. */
    private void jump(LaneMachine lane) {
        long far = farOff();
        agenda.note("clock jumps " + far);
        lane.clock.jumps(far);
    }

    private long farOff() {
        return dice.one(List.of(-LaneClock.HOUR_NS, LaneClock.HOUR_NS, 24 * LaneClock.HOUR_NS, -24 * LaneClock.HOUR_NS,
                -Agenda.S));
    }
}

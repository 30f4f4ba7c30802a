package org.cupbeam.track;

/** Acts on what is thought of the sensors: what is not believed any more takes what it alone has said with it. */
final class Belief {
    /** A strike sensor that is found to be out of order was so already for this long. */
    private static final long DOUBTED_NS = 10_000_000_000L;

    private final Lay lay;
    private final Room room;
    private final Doubts doubts;
    private final Flight flight;
    private final Strikes strikes;

    Belief(Lay lay, Room room, Doubts doubts, Flight flight, Strikes strikes) {
        this.lay = lay;
        this.room = room;
        this.doubts = doubts;
        this.flight = flight;
        this.strikes = strikes;
    }

    /** Asks of every sensor whether it is believed now. */
    void ask(long nowNs) {
        for (int i = 0; i < room.channels(); i++) {
            ask(i, nowNs);
        }
    }

    /** A beam's pulse says something of it and its fellow alone; any other may bring an attempt, which says something of more. */
    void afterPulse(int channel, long nowNs) {
        int beam = room.beamOf(channel);
        if (beam < 0) {
            ask(nowNs);
        } else if (lay.fellow(beam) >= 0) {
            ask(channel, nowNs);
            ask(lay.channel[lay.fellow(beam)], nowNs);
        }
    }

    private void ask(int channel, long nowNs) {
        boolean whether = doubts.believes(channel);
        if (whether == room.isUsable(channel)) {
            return;
        }
        room.setUsable(channel, whether, nowNs);
        if (!whether && room.beamOf(channel) >= 0) {
            flight.forget(room.beamOf(channel));
        } else if (!whether && channel == room.strike) {
            strikes.forgetSince(nowNs - DOUBTED_NS);
        }
    }
}

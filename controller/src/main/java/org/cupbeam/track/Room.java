package org.cupbeam.track;

import org.cupbeam.rig.Channel.Kind;
import org.cupbeam.rig.Rig;

/** The lane's sensors, and what they have seen lately. */
final class Room {
    /** Faster than any putt: what is shorter at a beam is no ball. */
    private static final double FASTEST_MM_PER_S = 6000;
    /** Chatter at a beam; a ball at 5 m/s takes eight times as long. */
    private static final long FLICKER_NS = 1_000_000;
    /** No hand is in a cup for so long. */
    private static final long FULL_NS = 3_000_000_000L;
    private static final long SHORTEST_DROP_NS = 2_000_000;
    private static final long SHORTEST_STRIKE_NS = 300_000;
    private static final long SHORTEST_PRESS_NS = 30_000_000;

    private final Sensor[] sensors;
    private final int[] beamOf;
    private final boolean[] usable;
    private final Lay lay;
    private final int before;
    private long cupDoubtedNs = Long.MIN_VALUE;
    final int cup;
    final int strike;
    final int pedal;

    Room(Rig rig, Lay lay) {
        int channels = rig.channels().size();
        cup = rig.channelOf(Kind.CUP);
        strike = rig.channelOf(Kind.STRIKE);
        pedal = rig.channelOf(Kind.PEDAL);
        sensors = new Sensor[channels];
        beamOf = new int[channels];
        this.lay = lay;
        before = lay.before;
        usable = new boolean[channels];
        for (int i = 0; i < channels; i++) {
            beamOf[i] = -1;
            usable[i] = true;
        }
        for (int i = 0; i < lay.beams; i++) {
            beamOf[lay.channel[i]] = i;
        }
        for (int i = 0; i < channels; i++) {
            Kind kind = rig.channels().get(i).kind();
            sensors[i] = new Sensor(shortestNs(kind, lay, beamOf[i]), kind == Kind.BEAM ? FLICKER_NS : 0);
        }
    }

    private static long shortestNs(Kind kind, Lay lay, int beam) {
        return switch (kind) {
            case BEAM -> (long) (2 * lay.halfChordMm[beam] / FASTEST_MM_PER_S * 1e9);
            case CUP -> SHORTEST_DROP_NS;
            case STRIKE -> SHORTEST_STRIKE_NS;
            case PEDAL -> SHORTEST_PRESS_NS;
        };
    }

    Sensor sensor(int channel) {
        return sensors[channel];
    }

    /** The beam on a channel; -1 if it is none's. */
    int beamOf(int channel) {
        return beamOf[channel];
    }

    int channels() {
        return sensors.length;
    }

    /** Whether a channel can be relied on to have seen nothing in this time. */
    boolean isClear(int channel, long fromNs, long toNs) {
        return usable[channel] && !sensors[channel].blockedWithin(fromNs, toNs);
    }

    boolean isUsable(int channel) {
        return usable[channel];
    }

    void setUsable(int channel, boolean whether, long nowNs) {
        usable[channel] = whether;
        if (channel == cup) {
            cupDoubtedNs = nowNs;
        }
    }

    /** Whether a beam is what is left of a pair, so that nothing tells a foot in it from a ball. */
    boolean isHalf(int beam) {
        return lay.fellow(beam) >= 0 && !usable[lay.channel[lay.fellow(beam)]];
    }

    /**
     * Whether a drop since a time may have gone untold: the cup's sensor was out of order, or something has been in it for
     * long, as when it is full.
     */
    boolean cupInDoubt(long sinceNs, long nowNs) {
        if (cup < 0) {
            return false;
        }
        long blockedNs = cupBlockedSinceNs();
        return !usable[cup] || cupDoubtedNs > sinceNs || blockedNs != Sensor.NEVER && nowNs - blockedNs > FULL_NS;
    }

    /** Since when the cup has been blocked without a break; {@link Sensor#NEVER} if it is not. */
    long cupBlockedSinceNs() {
        return cup < 0 ? Sensor.NEVER : sensors[cup].blockedSinceNs();
    }

    /** Whether there is a strike sensor that can be relied on. */
    boolean feelsStrikes() {
        return strike >= 0 && usable[strike];
    }

    /** Whether a beam before the hole would tell of a ball on its way to it. */
    boolean seesApproach() {
        for (int i = 0; i < sensors.length; i++) {
            if (usable[i] && beamOf[i] >= 0 && beamOf[i] < before) {
                return true;
            }
        }
        return false;
    }

    /** The channel whose open pulse is over first; -1 if there is none. */
    int nextToClose() {
        int next = -1;
        long earliest = Sensor.NEVER;
        for (int i = 0; i < sensors.length; i++) {
            long closes = sensors[i].closesNs();
            if (closes < earliest) {
                earliest = closes;
                next = i;
            }
        }
        return next;
    }

    /** Whether the beams (but for two) and the cup saw nothing in this time. */
    boolean isQuiet(long fromNs, long toNs, int except, int exceptToo) {
        for (int i = 0; i < sensors.length; i++) {
            boolean counts = i != except && i != exceptToo && i != strike && i != pedal && usable[i];
            if (counts && sensors[i].blockedWithin(fromNs, toNs)) {
                return false;
            }
        }
        return true;
    }
}

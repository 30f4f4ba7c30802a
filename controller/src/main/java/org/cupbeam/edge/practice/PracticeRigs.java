package org.cupbeam.edge.practice;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;

/** The four usual rigs, fitted as one would: pairs 60 mm apart, 21 mm above the surface. */
public enum PracticeRigs {
    /** Cup, and a pair past the limit. */
    GATE(false, false, false),
    /** Gate, and a strike sensor. */
    STRUCK(true, false, false),
    /** Gate, and a pair before the hole. */
    STANDARD(false, true, false),
    /** Standard, a pair just behind the hole, and a strike sensor. */
    FULL(true, true, true);

    private static final double LIMIT_MM = 914.4;
    private static final double APART_MM = 60;
    private static final double HEIGHT_MM = 21;
    private static final int PEDAL_GPIO = 16;

    private final boolean strike;
    private final boolean before;
    private final boolean behind;

    PracticeRigs(boolean strike, boolean before, boolean behind) {
        this.strike = strike;
        this.before = before;
        this.behind = behind;
    }

    /** On a level green of 10 ft. */
    public Rig level() {
        return on(10, 0, 0);
    }

    /**
     * On a green of one's choice.
     *
     * @param stimpFt       the green's speed, ft
     * @param uphillPercent slope along the line, uphill positive
     * @param sidePercent   slope across it, falling to the left positive
     */
    public Rig on(double stimpFt, double uphillPercent, double sidePercent) {
        List<Channel> channels = new ArrayList<>();
        List<Beam> beams = new ArrayList<>();
        channels.add(channel("cup", Channel.Kind.CUP, 17));
        if (strike) {
            channels.add(channel("strike", Channel.Kind.STRIKE, 27));
        }
        if (before) {
            pair("before", -300, 22, channels, beams);
        }
        if (behind) {
            pair("behind", 120, 24, channels, beams);
        }
        pair("past", LIMIT_MM, 5, channels, beams);
        return new Rig(stimpFt, uphillPercent, sidePercent, LIMIT_MM, channels, beams, OptionalInt.empty());
    }

    /** The same rig with a pedal, which players press for a ball that no sensor saw. */
    public static Rig withPedal(Rig rig) {
        List<Channel> channels = new ArrayList<>(rig.channels());
        channels.add(channel("pedal", Channel.Kind.PEDAL, PEDAL_GPIO));
        return new Rig(rig.stimpFt(), rig.uphillPercent(), rig.sidePercent(), rig.limitMm(), channels, rig.beams(),
                rig.lampGpio());
    }

    private static void pair(String name, double positionMm, int gpio, List<Channel> channels, List<Beam> beams) {
        for (int i = 0; i < 2; i++) {
            beams.add(new Beam(channels.size(), positionMm + i * APART_MM, HEIGHT_MM));
            channels.add(channel(name + "-" + (i + 1), Channel.Kind.BEAM, gpio + i));
        }
    }

    private static Channel channel(String name, Channel.Kind kind, int gpio) {
        return new Channel(name, kind, gpio, Channel.Level.HIGH, Channel.Pull.OFF);
    }
}

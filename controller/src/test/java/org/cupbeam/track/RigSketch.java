package org.cupbeam.track;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Channel.Kind;
import org.cupbeam.rig.Rig;

/** Fits an odd rig, sensor by sensor. A beam is named after where it stands: {@code at-300}, {@code at914}. */
final class RigSketch {
    static final double LIMIT_MM = 914.4;
    static final double HEIGHT_MM = 21;
    private static final double APART_MM = 60;

    private final List<Channel> channels = new ArrayList<>();
    private final List<Beam> beams = new ArrayList<>();
    private double stimpFt = 10;
    private double uphillPercent;

    RigSketch green(double feet, double uphill) {
        stimpFt = feet;
        uphillPercent = uphill;
        return this;
    }

    RigSketch single(Kind kind) {
        channels.add(channel(kind.name().toLowerCase(Locale.ROOT), kind));
        return this;
    }

    /** Two beams, 60 mm apart. */
    RigSketch pair(int firstMm) {
        return beam(firstMm, HEIGHT_MM).beam(firstMm + APART_MM, HEIGHT_MM);
    }

    RigSketch beam(double positionMm, double heightMm) {
        beams.add(new Beam(channels.size(), positionMm, heightMm));
        channels.add(channel("at" + (int) positionMm, Kind.BEAM));
        return this;
    }

    Rig rig() {
        List<Beam> inOrder = beams.stream().sorted(Comparator.comparingDouble(Beam::positionMm)).toList();
        return new Rig(stimpFt, uphillPercent, 0, LIMIT_MM, channels, inOrder, OptionalInt.empty());
    }

    private Channel channel(String name, Kind kind) {
        return new Channel(name, kind, channels.size(), Channel.Level.HIGH, Channel.Pull.OFF);
    }
}

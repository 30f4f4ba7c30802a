package org.cupbeam.track;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Channel.Kind;
import org.cupbeam.rig.Rig;

/** Fits a rig, sensor by sensor. A beam is named after where it stands: {@code at-300}, {@code at914}. */
final class RigSketch {
    static final double LIMIT_MM = 914.4;
    static final double HEIGHT_MM = 21;
    private static final double APART_MM = 60;

    private final List<Channel> channels = new ArrayList<>();
    private final List<Beam> beams = new ArrayList<>();
    private double stimpFt = 10;
    private double uphillPercent;

    static RigSketch gate() {
        return new RigSketch().single(Kind.CUP).pair(900);
    }

    static RigSketch struck() {
        return gate().single(Kind.STRIKE);
    }

    static RigSketch standard() {
        return new RigSketch().single(Kind.CUP).pair(-300).pair(900);
    }

    static RigSketch full() {
        return new RigSketch().single(Kind.CUP).single(Kind.STRIKE).pair(-300).pair(120).pair(900);
    }

    RigSketch green(double feet, double uphill) {
        stimpFt = feet;
        uphillPercent = uphill;
        return this;
    }

    RigSketch single(Kind kind) {
        channels.add(channel(kind.name().toLowerCase(java.util.Locale.ROOT), kind));
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
        List<Beam> inOrder = beams.stream().sorted(java.util.Comparator.comparingDouble(Beam::positionMm)).toList();
        return new Rig(stimpFt, uphillPercent, 0, LIMIT_MM, channels, inOrder, OptionalInt.empty());
    }

    private Channel channel(String name, Kind kind) {
        return new Channel(name, kind, channels.size(), Channel.Level.HIGH, Channel.Pull.OFF);
    }
}

package org.cupbeam.edge.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;

/** Small rigs for tests: a cup, and beams by name. */
final class Rigs {
    private Rigs() {
    }

    static Rig withCupAnd(String... beamNames) {
        List<Channel> channels = new ArrayList<>();
        List<Beam> beams = new ArrayList<>();
        channels.add(new Channel("cup", Channel.Kind.CUP, 17, Channel.Level.HIGH, Channel.Pull.UP));
        for (String name : beamNames) {
            int index = channels.size();
            channels.add(new Channel(name, Channel.Kind.BEAM, index, Channel.Level.HIGH, Channel.Pull.UP));
            beams.add(new Beam(index, 100 * index, 21));
        }
        return new Rig(10, 0, 0, 914.4, channels, beams, OptionalInt.empty());
    }
}

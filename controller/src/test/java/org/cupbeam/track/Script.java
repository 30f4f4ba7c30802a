package org.cupbeam.track;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Rig;

/** What happens on a lane, written down by hand, and the edges that its sensors would make of it. Times in s. */
final class Script {
    /** From the hole's middle to the cup's sensor. */
    static final double FALL_S = 0.08;

    private record Change(int channel, int by, long timeNs) {
    }

    private final Rig rig;
    private final List<Change> changes = new ArrayList<>();
    private final List<Integer> faulty = new ArrayList<>();
    private boolean chatters;

    Script(Rig rig) {
        this.rig = rig;
    }

    /** Something is in a sensor's way, or on it. */
    Script blocks(String name, double fromS, double toS) {
        int channel = channel(name);
        changes.add(new Change(channel, 1, ns(fromS)));
        if (toS < Double.POSITIVE_INFINITY) {
            changes.add(new Change(channel, -1, ns(toS)));
        }
        return this;
    }

    /** A ball rolls; a finite {@link FakeBall#toMm} of 0 drops into the cup. */
    Script rolls(FakeBall ball) {
        for (Beam beam : rig.beams()) {
            double fromS = ball.blocksS(beam);
            if (fromS < ball.goneS()) {
                String name = rig.channels().get(beam.channel()).name();
                double toS = ball.clearsS(beam);
                if (chatters) {
                    blocks(name, fromS, fromS + 0.0001).blocks(name, fromS + 0.0004, fromS + 0.0006)
                            .blocks(name, toS + 0.0003, toS + 0.0005).blocks(name, toS + 0.0011, toS + 0.0013);
                }
                blocks(name, chatters ? fromS + 0.0009 : fromS, toS);
            }
        }
        return ball.toMm() == 0 && has("cup") ? drops(ball.timeAtS(0) + FALL_S) : this;
    }

    /** The same, and the putter is heard. */
    Script putts(FakeBall ball) {
        return struck(ball.atS()).rolls(ball);
    }

    Script struck(double atS) {
        return blocks("strike", atS, atS + 0.002);
    }

    /** A ball falls past the cup's sensor, and rattles. */
    Script drops(double atS) {
        return blocks("cup", atS, atS + 0.025).blocks("cup", atS + 0.060, atS + 0.072)
                .blocks("cup", atS + 0.095, atS + 0.100);
    }

    /** A hand goes into the cup, its fingers first, and comes out again. */
    Script hand(double atS, double forS) {
        return blocks("cup", atS, atS + 0.008).blocks("cup", atS + 0.014, atS + forS)
                .blocks("cup", atS + forS + 0.006, atS + forS + 0.013);
    }

    Script press(double atS, double forS) {
        return blocks("pedal", atS, atS + forS);
    }

    /** Its word does not count from the start. */
    Script faulty(String name) {
        faulty.add(channel(name));
        return this;
    }

    /** From here on, receivers chatter for a while as a limb comes into a beam, and as it goes. */
    Script chattering() {
        chatters = true;
        return this;
    }

    Played played() {
        Played played = new Played();
        Tracker tracker = new Tracker(rig, played);
        faulty.forEach(channel -> tracker.setUsable(channel, false));
        edges(tracker);
        tracker.end();
        return played;
    }

    /** Plays the edges alone, in order of time. */
    void edges(EdgeSink sink) {
        int[] inTheWay = new int[rig.channels().size()];
        changes.sort(Comparator.comparingLong(Change::timeNs).thenComparing(Change::by, Comparator.reverseOrder()));
        for (Change change : changes) {
            boolean before = inTheWay[change.channel] > 0;
            inTheWay[change.channel] += change.by;
            boolean after = inTheWay[change.channel] > 0;
            if (before != after) {
                sink.edge(change.channel, after, change.timeNs);
            }
        }
    }

    private boolean has(String name) {
        return rig.channels().stream().anyMatch(each -> each.name().equals(name));
    }

    private int channel(String name) {
        for (int i = 0; i < rig.channels().size(); i++) {
            if (rig.channels().get(i).name().equals(name)) {
                return i;
            }
        }
        throw new IllegalArgumentException("no " + name + " on this rig: " + rig.channels());
    }

    private static long ns(double seconds) {
        return Math.round(seconds * 1e9);
    }
}

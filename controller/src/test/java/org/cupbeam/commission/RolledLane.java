package org.cupbeam.commission;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.cupbeam.edge.EdgeSink;
import org.cupbeam.edge.practice.PracticeBench;
import org.cupbeam.edge.practice.PracticeLane;
import org.cupbeam.edge.practice.PracticeRigs;
import org.cupbeam.edge.practice.Sensing;
import org.cupbeam.edge.practice.Surface;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Channel;
import org.cupbeam.rig.Rig;
import org.cupbeam.track.RolledBall;

/** A simulated lane with balls rolled through it, and what the watch made of them. */
final class RolledLane {
    static final double GAUGE_SD_MM = 1;
    final PracticeBench bench;
    final List<RolledBall> balls = new ArrayList<>();
    final List<String> troubles = new ArrayList<>();
    final List<Place> places = new ArrayList<>();
    final List<Chord> chords = new ArrayList<>();
    final double uphillPercent;

    /** @param measured how many beams were measured by hand, with an error of 1 mm */
    RolledLane(long seed, PracticeRigs kind, int rolls, int measured) {
        Random random = new Random(seed);
        uphillPercent = random.nextGaussian();
        Rig nominal = kind.on(8 + 4 * random.nextDouble(), uphillPercent, 0.5 * random.nextGaussian());
        List<Beam> beams = nominal.beams().stream().map(each -> new Beam(each.channel(), each.positionMm() + 5 * random.nextGaussian(),
                each.heightMm() + Chord.HEIGHT_SD_MM * random.nextGaussian())).toList();
        Rig rig = new Rig(nominal.stimpFt(), nominal.uphillPercent(), nominal.sidePercent(), nominal.limitMm(), nominal.channels(),
                beams, nominal.lampGpio());
        List<Integer> gpios = rig.channels().stream().map(Channel::gpio).toList();
        BallWatch watch = new BallWatch(beams.stream().map(each -> rig.channels().get(each.channel()).name()).toList(),
                balls::add, troubles::add);
        bench = new PracticeBench(seed, PracticeLane.clean(rig).with(Surface.usual()).with(Sensing.usual()), gpios, new EdgeSink() {
            @Override
            public void edge(int line, boolean high, long timeNs) {
                for (int i = 0; i < beams.size(); i++) {
                    if (beams.get(i).channel() == line) {
                        watch.edge(i, high, timeNs);
                    }
                }
            }

            @Override
            public void settled(long timeNs) {
                watch.settled(timeNs);
            }
        });
        bench.start();
        bench.rest(1);
        for (int i = 0; i < rolls; i++) {
            bench.roll(i % 2 == 0);
        }
        for (int i = 0; i < beams.size(); i++) {
            places.add(i < measured ? new Place(bench.placesMm().get(i) + GAUGE_SD_MM * random.nextGaussian(), GAUGE_SD_MM)
                    : Place.UNKNOWN);
            chords.add(Chord.at(nominal.beams().get(i).heightMm()));
        }
    }

    ArrayEstimate estimate() {
        return new ArrayFit(balls, places, chords).estimate();
    }
}

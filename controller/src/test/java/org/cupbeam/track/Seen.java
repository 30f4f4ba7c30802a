package org.cupbeam.track;

import java.util.Random;
import org.cupbeam.rig.Beam;
import org.cupbeam.rig.Rig;

/** What the beams of a lane see of a ball: where they truly stand, how late their receivers are, how they jitter. */
final class Seen {
    final double[] offsetMm;
    final double[] lagS;
    private final Rig rig;
    private final Lay lay;
    private final double jitterS;
    private final Random random;

    Seen(Rig rig, double offsetSdMm, double lagSdS, double jitterS, Random random) {
        this.rig = rig;
        this.jitterS = jitterS;
        this.random = random;
        lay = new Lay(rig);
        offsetMm = random.doubles(lay.beams).map(each -> offsetSdMm * random.nextGaussian()).toArray();
        lagS = random.doubles(lay.beams).map(each -> lagSdS * random.nextGaussian()).toArray();
    }

    /** Beams that stand where they should, with receivers without fault. */
    static Seen exactly(Rig rig) {
        return new Seen(rig, 0, 0, 0, new Random(0));
    }

    /** The ball with all the crossings that it completes. */
    Ball ball(FakeBall fake, LaneBelief lane) {
        Ball ball = new Ball(lay);
        boolean begun = false;
        for (int i = 0; i < lay.beams; i++) {
            Beam beam = rig.beams().get(i);
            Beam there = new Beam(beam.channel(), beam.positionMm() + offsetMm[i], beam.heightMm());
            double clearsS = fake.clearsS(there);
            if (clearsS < Double.POSITIVE_INFINITY) {
                long onNs = ns(fake.blocksS(there));
                long offNs = ns(clearsS + lagS[i]);
                if (begun) {
                    ball.cross(i, onNs, offNs);
                } else {
                    ball.begin(i, onNs, offNs, lane);
                }
                begun = true;
            }
        }
        return ball;
    }

    private long ns(double seconds) {
        return Math.round((seconds + jitterS * random.nextGaussian()) * 1e9);
    }
}

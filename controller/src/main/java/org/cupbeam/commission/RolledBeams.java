package org.cupbeam.commission;

import java.util.List;
import org.cupbeam.track.RolledBall;

/** The estimate of places for whoever has balls and beams from elsewhere, such as a lane's test of its green. */
public final class RolledBeams {
    private RolledBeams() {
    }

    /**
     * A beam.
     *
     * @param measuredMm from the hole's centre, by rule; NaN where nobody measured
     * @param withinMm   how well (95 %), above 0
     * @param chordMm    how much of a ball's way it sees, above 0 up to a ball's diameter
     */
    public record Beam(double measuredMm, double withinMm, double chordMm) {
    }

    /** One ball through all beams. @param toward as putts go, else back */
    public record Ball(boolean toward, List<Crossing> crossings) {
    }

    /** A beam crossed, by its index; times in ns since some time of the ball's own. */
    public record Crossing(int beam, long onNs, long offNs) {
    }

    /**
     * Where they stand.
     *
     * @throws IllegalArgumentException where there is no ball or no measured beam, or the numbers make no sense
     */
    public static ArrayEstimate estimate(List<Beam> beams, List<Ball> balls) {
        if (balls.isEmpty() || beams.size() < 2 || beams.stream().allMatch(each -> Double.isNaN(each.measuredMm))) {
            throw new IllegalArgumentException("places are told by a ball or more, two beams or more, and one measured place");
        }
        for (Ball ball : balls) {
            if (ball.crossings.stream().map(Crossing::beam).distinct().count() != beams.size()
                    || ball.crossings.stream().anyMatch(each -> each.beam < 0 || each.beam >= beams.size() || each.offNs <= each.onNs)) {
                throw new IllegalArgumentException("each ball crosses each beam, and leaves it later than it comes");
            }
        }
        try {
            return new ArrayFit(balls.stream().map(ball -> new RolledBall(ball.toward, ball.crossings.stream()
                    .map(each -> new RolledBall.Crossing(each.beam, each.onNs, each.offNs)).toList())).toList(),
                    beams.stream().map(each -> Double.isNaN(each.measuredMm) ? Place.UNKNOWN
                            : new Place(each.measuredMm, Within.sd(each.withinMm))).toList(),
                    beams.stream().map(each -> Chord.seeing(each.chordMm)).toList()).estimate();
        } catch (ArithmeticException undetermined) {
            throw new IllegalArgumentException("these balls determine no places", undetermined);
        }
    }
}

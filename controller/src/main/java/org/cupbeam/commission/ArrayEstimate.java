package org.cupbeam.commission;

import java.util.List;
import org.cupbeam.green.GreenSpeed;
import org.cupbeam.green.Slope;

/**
 * Where an array of beams stands and how the green slows balls, by the balls rolled through it.
 *
 * @param balls        how many
 * @param placesMm     from the hole's centre, in the beams' order
 * @param placeSdsMm   standard deviations
 * @param spacingSdsMm of each beam's distance from the first
 * @param toward       deceleration as putts go, mm/s²; its sd 0 where no ball went so
 * @param back         likewise the other way
 * @param both         of half the sum, that is, of the green
 */
public record ArrayEstimate(int balls, List<Double> placesMm, List<Double> placeSdsMm, List<Double> spacingSdsMm,
                            Value toward, Value back, Value both) {

    /** A value with its standard deviation. */
    public record Value(double is, double sd) {
        /** Half the width of the interval that holds the truth 95 times in 100. */
        public double within() {
            return Within.of(sd);
        }
    }

    public ArrayEstimate {
        placesMm = List.copyOf(placesMm);
        placeSdsMm = List.copyOf(placeSdsMm);
        spacingSdsMm = List.copyOf(spacingSdsMm);
    }

    /** Whether balls were rolled both ways, and so tell the slope from the green. */
    public boolean bothWays() {
        return toward.sd > 0 && back.sd > 0;
    }

    /** The slope along the line in per cent, uphill positive, from both ways. */
    public Value uphillPercent() {
        double pull = (toward.is - back.is) / 2;
        double sine = pull / (Slope.ROLLING_SHARE * Slope.GRAVITY_MM_PER_S2);
        double sd = Math.hypot(toward.sd, back.sd) / 2 / Slope.pullMmPerS2(1);
        return new Value(100 * Math.tan(Math.asin(sine)), sd);
    }

    /**
     * The green's speed as on the level, ft.
     *
     * @param uphillPercent the slope, where balls went one way only; else theirs counts
     */
    public Value stimpFt(double uphillPercent) {
        double uphill = bothWays() ? uphillPercent().is : toward.sd > 0 ? uphillPercent : -uphillPercent;
        Value slows = bothWays() ? both : toward.sd > 0 ? toward : back;
        double stimp = GreenSpeed.stimpFt(slows.is, bothWays() ? 0 : uphill);
        return new Value(bothWays() ? GreenSpeed.stimpFt(slows.is + Slope.pullMmPerS2(uphill), uphill) : stimp,
                stimp * slows.sd / (slows.is - (bothWays() ? 0 : Slope.pullMmPerS2(uphill))));
    }

    /** Whether this makes sense: balls slow down, and stop. */
    public boolean credible() {
        return (toward.sd == 0 || toward.is > 0) && (back.sd == 0 || back.is > 0);
    }
}

package org.cupbeam.studio.web;

import java.util.List;
import org.cupbeam.studio.insight.chance.Estimate;
import org.cupbeam.studio.insight.surface.DaySpeed;
import org.cupbeam.studio.insight.surface.Reading;
import org.cupbeam.studio.store.GreenRange;
import org.cupbeam.studio.store.GreenTest;

/** A green's speed as the pages read it: speeds in ft, to a hundredth. */
final class GreenSaid {
    private GreenSaid() {
    }

    /** A lane in the list; what is not said is null. @param now null where it has not been heard of late */
    record Listed(String studio, String lane, Speed now, Double uphillPercent, Double sidePercent, Range range,
                  String alert) {
    }

    /** @param sd standard deviation */
    record Speed(long atMs, double ft, double low, double high, double sd) {
        static Speed of(Reading reading) {
            Estimate estimate = Estimate.normal(reading.stimpFt(), reading.sdFt());
            return new Speed(reading.atMs(), hundredth(estimate.value()), hundredth(estimate.low()),
                    hundredth(estimate.high()), Math.round(reading.sdFt() * 1000) / 1000.0);
        }
    }

    /** What was gained (positive) or lost over a day. */
    record Drift(double ft, double low, double high) {
        static Drift of(DaySpeed day) {
            return day.driftFt().map(each -> new Drift(hundredth(each.value()), hundredth(each.low()),
                    hundredth(each.high()))).orElse(null);
        }
    }

    record Range(Double lowFt, Double highFt) {
        static Range of(GreenRange rangeOrNull) {
            return rangeOrNull == null ? null : new Range(rangeOrNull.lowFt(), rangeOrNull.highFt());
        }
    }

    /** One day, by its last reading. @param drift null with less than three hours of play */
    record Day(String day, Speed last, Drift drift, String alert) {
    }

    /**
     * A lane's day, and the days before it.
     *
     * @param said null on a day without readings
     * @param test the last test by balls rolled both ways that was kept; null where none was
     */
    record Lane(String studio, String lane, String zone, String day, String today, long startMs, long endMs, String said,
                String alert, Speed now, Double uphillPercent, List<Speed> readings, Drift drift, List<Day> days,
                Range range, GreenTest test) {
    }

    static double hundredth(double value) {
        return Math.round(value * 100) / 100.0;
    }
}

package org.cupbeam.studio.insight.surface;

import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cupbeam.studio.insight.chance.Bell;
import org.cupbeam.studio.insight.chance.Estimate;
import org.cupbeam.studio.insight.words.Words;

/**
 * A green's speed on one day.
 *
 * @param last     what the lane held it to be in the end, in ft
 * @param lastSdFt how well
 * @param driftFt  how much it gained (positive) or lost from the first hour to the last; none with less than three hours
 * @param hours    with readings
 */
public record DaySpeed(Estimate last, double lastSdFt, Optional<Estimate> driftFt, int hours) {
    private static final long HOUR_MS = 3_600_000;
    private static final int HOURS_MIN = 3;
    private static final double SURE = 0.95;
    /** Less than this over a day, nobody would notice. */
    private static final double SMALL_FT = 0.15;

    /**
     * From the readings of a day, in order; empty without any.
     *
     * <p>A lane's readings follow from one another, and share the error of where its beams stand. So the last one stands for
     * itself, no average betters it; and for the drift each hour's last one counts as if it erred by itself, which is more
     * doubt than there is.
     *
     * @param zone by whose clock an hour begins; where the clock is set back, the hour that comes twice is two
     */
    public static Optional<DaySpeed> of(List<Reading> readings, ZoneId zone) {
        if (readings.isEmpty()) {
            return Optional.empty();
        }
        List<Reading> hourly = new ArrayList<>();
        for (int i = 0; i < readings.size(); i++) {
            boolean lastOfHour = i + 1 == readings.size()
                    || !hour(readings.get(i + 1), zone).equals(hour(readings.get(i), zone));
            if (lastOfHour) {
                hourly.add(readings.get(i));
            }
        }
        Reading last = readings.get(readings.size() - 1);
        return Optional.of(new DaySpeed(Estimate.normal(last.stimpFt(), last.sdFt()), last.sdFt(),
                hourly.size() < HOURS_MIN ? Optional.empty() : Optional.of(drift(hourly)), hourly.size()));
    }

    /** The chance that the green is out of this range now. */
    public double outside(double lowFt, double highFt) {
        return Bell.below((lowFt - last.value()) / lastSdFt) + Bell.below((last.value() - highFt) / lastSdFt);
    }

    /** A warning, as a sentence, where the green is surely out of the range that is wanted. */
    public Optional<String> alert(double lowFt, double highFt) {
        return outside(lowFt, highFt) < SURE ? Optional.empty()
                : Optional.of("The green runs " + Words.decimal(last.value(), 1) + " ft, "
                + (last.value() < lowFt ? "slower" : "faster") + " than the " + Words.decimal(lowFt, 1) + " to "
                + Words.decimal(highFt, 1) + " ft wanted.");
    }

    /** As a sentence. */
    public String inWords() {
        String now = "The green runs " + Words.decimal(last.value(), 1) + " ft (" + Words.decimal(last.low(), 1) + " to "
                + Words.decimal(last.high(), 1) + ")";
        return driftFt.map(drift -> {
            boolean clear = (drift.low() > 0 || drift.high() < 0) && Math.abs(drift.value()) > SMALL_FT;
            return clear ? now + ", and has become " + (drift.value() > 0 ? "faster" : "slower") + " by "
                    + Words.decimal(Math.abs(drift.value()), 1) + " ft over the day." : now + ", steady over the day.";
        }).orElse(now + ".");
    }

    /** A straight line through the hours, weighted by how well each is known. */
    private static Estimate drift(List<Reading> hourly) {
        double weight = 0;
        double hours = 0;
        double speeds = 0;
        long startMs = hourly.get(0).atMs();
        for (Reading each : hourly) {
            double w = 1 / (each.sdFt() * each.sdFt());
            weight += w;
            hours += w * hoursAfter(startMs, each);
            speeds += w * each.stimpFt();
        }
        double squares = 0;
        double products = 0;
        for (Reading each : hourly) {
            double w = 1 / (each.sdFt() * each.sdFt());
            double off = hoursAfter(startMs, each) - hours / weight;
            squares += w * off * off;
            products += w * off * (each.stimpFt() - speeds / weight);
        }
        double over = hoursAfter(startMs, hourly.get(hourly.size() - 1));
        return Estimate.normal(over * products / squares, over / Math.sqrt(squares));
    }

    private static Instant hour(Reading reading, ZoneId zone) {
        return Instant.ofEpochMilli(reading.atMs()).atZone(zone).truncatedTo(ChronoUnit.HOURS).toInstant();
    }

    private static double hoursAfter(long startMs, Reading reading) {
        return (double) (reading.atMs() - startMs) / HOUR_MS;
    }
}

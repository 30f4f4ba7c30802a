package org.cupbeam.studio.insight.make;

import java.util.List;
import java.util.OptionalDouble;
import org.cupbeam.studio.insight.chance.LogOdds;
import org.cupbeam.studio.insight.words.Units;

/**
 * Published make rates to compare a player with.
 *
 * @param name   who they are, as in "tour professionals hole 40 in 100"
 * @param source whose figures, to be named wherever they are shown
 * @param rates  by distance, the nearest first
 */
public record Bench(String name, String source, List<Rate> rates) {
    /** Tour professionals. */
    public static final Bench TOUR = new Bench("tour professionals",
            "PGA TOUR rates attributed to M. Broadie, as quoted by Golfing Focus (G. Hay, 3 Dec 2024); 6 and 8 ft "
                    + "quoted second-hand",
            table(2, 99, 3, 96, 4, 88, 5, 77, 6, 66, 8, 50, 10, 40, 15, 23, 20, 15, 30, 7, 40, 4, 50, 3, 60, 2));
    /** Amateurs who go round in some 90 strokes. */
    public static final Bench NINETY = new Bench("golfers who go round in 90",
            "90-golfer's rates attributed to M. Broadie, quoted second-hand",
            table(3, 84, 4, 65, 5, 50, 6, 39, 8, 27, 10, 20, 15, 11, 20, 6, 30, 2));

    /** A share holed from a distance. */
    public record Rate(double distanceMm, double share) {
    }

    public Bench {
        rates = List.copyOf(rates);
    }

    /** The benches that come with the product, the better first. */
    public static List<Bench> published() {
        return List.of(TOUR, NINETY);
    }

    /**
     * The rate from here: between two rows, straight in the log odds over the logarithm of the distance. None outside the
     * table: nobody has published that.
     */
    public OptionalDouble at(double distanceMm) {
        for (int i = 1; i < rates.size(); i++) {
            Rate near = rates.get(i - 1);
            Rate far = rates.get(i);
            if (distanceMm >= near.distanceMm && distanceMm <= far.distanceMm) {
                double part = Math.log(distanceMm / near.distanceMm) / Math.log(far.distanceMm / near.distanceMm);
                return OptionalDouble.of(LogOdds.chance(
                        (1 - part) * LogOdds.of(near.share) + part * LogOdds.of(far.share)));
            }
        }
        return OptionalDouble.empty();
    }

    private static List<Rate> table(int... feetAndHundredths) {
        Rate[] rows = new Rate[feetAndHundredths.length / 2];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = new Rate(feetAndHundredths[2 * i] * Units.MM_PER_FT, feetAndHundredths[2 * i + 1] / 100.0);
        }
        return List.of(rows);
    }
}

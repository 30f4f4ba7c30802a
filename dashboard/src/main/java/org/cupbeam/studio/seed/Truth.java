package org.cupbeam.studio.seed;

import java.time.Instant;
import java.util.List;
import org.cupbeam.event.Tags;

/**
 * What is true of a made-up player.
 *
 * @param player     the name
 * @param course     how the stroke changes over the year
 * @param eras       the strokes, the first from before the year's beginning
 * @param weaknesses kinds of putts that come off worse; most players have none
 */
public record Truth(String player, Course course, List<Era> eras, List<Weakness> weaknesses) {
    /** How a stroke changes. */
    public enum Course {
        /** Never. */
        STEADY,
        /** All at once, at the beginning of each era but the first. */
        TURNS,
        /** Little by little: each era is a month. */
        DRIFTS
    }

    /** A time in which a stroke stays the same. */
    public record Era(Instant from, Stroke stroke) {
    }

    public Truth {
        eras = List.copyOf(eras);
        weaknesses = List.copyOf(weaknesses);
    }

    /** The moments at which it turned; none where it drifts. */
    public List<Instant> turns() {
        return course != Course.TURNS ? List.of() : eras.stream().skip(1).map(Era::from).toList();
    }

    /** Whether there is nothing to be found: no turn, no drift, no weakness. */
    public boolean plain() {
        return course == Course.STEADY && weaknesses.isEmpty();
    }

    /** The stroke of a day, where no weakness shows. */
    public Stroke at(Instant moment) {
        Stroke stroke = eras.get(0).stroke();
        for (Era each : eras) {
            if (!each.from().isAfter(moment)) {
                stroke = each.stroke();
            }
        }
        return stroke;
    }

    /** The stroke for a putt of this kind. */
    public Stroke at(Instant moment, Tags tags, double stationMm) {
        Stroke stroke = at(moment);
        for (Weakness each : weaknesses) {
            if (each.shows(tags, stationMm)) {
                stroke = each.on(stroke);
            }
        }
        return stroke;
    }
}

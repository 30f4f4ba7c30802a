package org.cupbeam.studio.insight.weak;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.cupbeam.studio.insight.chance.Estimate;
import org.cupbeam.studio.insight.make.DirectionFit;
import org.cupbeam.studio.insight.make.DirectionTally;
import org.cupbeam.studio.insight.make.Opening;
import org.cupbeam.studio.insight.make.PaceFit;
import org.cupbeam.studio.insight.make.PaceTally;
import org.cupbeam.studio.insight.make.StrokeFit;
import org.cupbeam.studio.insight.shot.Sessions;
import org.cupbeam.studio.insight.shot.Shot;
import org.cupbeam.studio.insight.words.Units;

/**
 * Direction and pace of putts with a trait, set against those of the others of its family, from the putts of sessions that
 * measured them. Says in which of the two a weakness lies, and finds one in pace long before makes would.
 *
 * @param wider     what is clearly less steady than elsewhere, the worst first
 * @param paces     by trait, of those that there are measured putts of
 */
public record StrokeByTrait(List<Wider> wider, Map<Trait, PaceFit> paces) {
    /** Fewer measured putts than this say nothing. */
    private static final int FEWEST = 40;
    /** Partial pooling: by how much scatter differs from one kind to others, a standard deviation of its logarithm. */
    private static final double USUAL_LOG_SD = 0.2;
    /** Held likely of a direction beforehand: about the player's own, very roughly. */
    private static final double VAGUE_LOG_SD = 1;
    private static final double CLEAR_SDS = 2.5;
    /** Scatter wider by less than this (logarithm; 15 %) is none to tell of. */
    private static final double SMALL = 0.14;
    /** Stopping this much further or less far past the hole is a matter of taste. */
    private static final double SMALL_MM = 150;
    private static final double AIM_CLEAR_SDS = 3;

    public StrokeByTrait {
        wider = List.copyOf(wider);
        paces = Map.copyOf(paces);
    }

    /** From a player's putts; the overall stroke is where the search begins. */
    public static StrokeByTrait of(Sessions sessions, StrokeFit overall) {
        Map<Trait, Tally> tallies = new EnumMap<>(Trait.class);
        for (Trait trait : Trait.values()) {
            tallies.put(trait, new Tally());
        }
        for (int session = 0; session < sessions.count(); session++) {
            for (int i = sessions.starts()[session]; sessions.measured()[session] && i < sessions.starts()[session + 1];
                    i++) {
                count(tallies, sessions.shots().get(i));
            }
        }
        Map<Trait, PaceFit> paces = new EnumMap<>(Trait.class);
        Map<Trait, Scatter> ofPace = new EnumMap<>(Trait.class);
        Map<Trait, Scatter> ofDirection = new EnumMap<>(Trait.class);
        tallies.forEach((trait, tally) -> {
            if (tally.putts >= FEWEST) {
                PaceFit pace = PaceFit.of(tally.pace, overall.pace());
                DirectionFit direction = DirectionFit.of(tally.direction, overall.direction().logRad(), VAGUE_LOG_SD);
                paces.put(trait, pace);
                ofPace.put(trait, new Scatter(Math.log(100 * pace.paceSd()), pace.logSd(), tally.putts));
                ofDirection.put(trait, new Scatter(direction.logRad() + Math.log(180 / Math.PI), direction.logSd(),
                        tally.putts));
            }
        });
        List<Wider> wider = new ArrayList<>();
        ofDirection.forEach((trait, scatter) -> scatter.wider(trait, true, ofDirection).ifPresent(wider::add));
        ofPace.forEach((trait, scatter) -> scatter.wider(trait, false, ofPace).ifPresent(wider::add));
        wider.sort((one, other) -> Double.compare(other.times().value(), one.times().value()));
        return new StrokeByTrait(wider, paces);
    }

    /** How much further past the hole putts are sent downhill than uphill; empty unless the putts show it. */
    public Optional<Double> furtherDownhillMm() {
        PaceFit up = paces.get(Trait.UPHILL);
        PaceFit down = paces.get(Trait.DOWNHILL);
        if (up == null || down == null) {
            return Optional.empty();
        }
        double further = down.aimPastMm() - up.aimPastMm();
        boolean clear = Math.abs(further) > AIM_CLEAR_SDS * Math.hypot(up.aimSdMm(), down.aimSdMm());
        return clear && Math.abs(further) > SMALL_MM ? Optional.of(further) : Optional.empty();
    }

    /** As sentences; none where there is nothing to say. */
    public List<String> inWords(Units units) {
        List<String> sentences = new ArrayList<>();
        wider.forEach(each -> sentences.add(each.inWords(units)));
        furtherDownhillMm().ifPresent(mm -> sentences.add("Downhill putts roll on average " + units.length(mm)
                + (mm > 0 ? " further" : " less far") + " past the hole than uphill ones."));
        return sentences;
    }

    /** A scatter's logarithm, in the unit that it is told in, and how well it is known. */
    private record Scatter(double log, double sd, int putts) {

        /** Set against the others of the family; empty where it is not clearly wider. */
        Optional<Wider> wider(Trait trait, boolean direction, Map<Trait, Scatter> all) {
            double weight = 0;
            double sum = 0;
            for (Trait each : trait.others()) {
                Scatter other = all.get(each);
                if (other != null) {
                    weight += 1 / (other.sd * other.sd);
                    sum += other.log / (other.sd * other.sd);
                }
            }
            double elsewhere = sum / weight;
            double variance = sd * sd + 1 / weight;
            double share = USUAL_LOG_SD * USUAL_LOG_SD / (USUAL_LOG_SD * USUAL_LOG_SD + variance);
            double pooled = share * (log - elsewhere);
            double pooledSd = Math.sqrt(share * variance);
            // Without any others the weight is 0 and nothing here is a number, nor clear.
            boolean clear = weight > 0 && pooled > CLEAR_SDS * pooledSd && pooled > SMALL;
            return clear ? Optional.of(new Wider(trait, direction, Estimate.ofLog(pooled, pooledSd), Math.exp(log),
                    Math.exp(elsewhere), putts)) : Optional.empty();
        }
    }

    private static void count(Map<Trait, Tally> tallies, Shot shot) {
        int cell = shot.hasPace() ? DirectionTally.cell(Opening.halfAngleRad(shot)) : -1;
        tallies.forEach((trait, tally) -> {
            if (trait.of(shot.distanceMm(), shot.breaks(), shot.lie())) {
                tally.add(shot, cell);
            }
        });
    }

    private static final class Tally {
        private final DirectionTally direction = new DirectionTally();
        private final PaceTally pace = new PaceTally();
        private int putts;

        void add(Shot shot, int cell) {
            if (shot.hasPace()) {
                pace.add(shot.distanceMm(), shot.paceMm());
                direction.addTo(cell, shot.holed());
                putts++;
            } else if (!Double.isNaN(shot.finishBelowMm())) {
                pace.addBelow(shot.distanceMm(), shot.finishBelowMm());
            }
        }
    }
}

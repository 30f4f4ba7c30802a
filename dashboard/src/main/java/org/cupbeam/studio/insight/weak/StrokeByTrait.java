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
        List<Wider> wider = new ArrayList<>();
        Map<Trait, PaceFit> paces = new EnumMap<>(Trait.class);
        tallies.forEach((trait, tally) -> {
            Tally others = trait.others().stream().map(tallies::get).reduce(new Tally(), Tally::plus);
            if (tally.putts >= FEWEST) {
                PaceFit pace = PaceFit.of(tally.pace, overall.pace());
                paces.put(trait, pace);
                if (others.putts >= FEWEST) {
                    compare(trait, tally, others, overall, pace).forEach(wider::add);
                }
            }
        });
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

    private static List<Wider> compare(Trait trait, Tally tally, Tally others, StrokeFit overall, PaceFit pace) {
        PaceFit otherPace = PaceFit.of(others.pace, overall.pace());
        DirectionFit direction = DirectionFit.of(tally.direction, overall.direction().logRad(), 1);
        DirectionFit otherDirection = DirectionFit.of(others.direction, overall.direction().logRad(), 1);
        List<Wider> clear = new ArrayList<>();
        pooled(direction.logRad() - otherDirection.logRad(), Math.hypot(direction.logSd(), otherDirection.logSd()))
                .ifPresent(times -> clear.add(new Wider(trait, true, times, Math.toDegrees(Math.exp(direction.logRad())),
                        Math.toDegrees(Math.exp(otherDirection.logRad())), tally.putts)));
        pooled(Math.log(pace.paceSd() / otherPace.paceSd()), Math.hypot(pace.logSd(), otherPace.logSd()))
                .ifPresent(times -> clear.add(new Wider(trait, false, times, 100 * pace.paceSd(),
                        100 * otherPace.paceSd(), tally.putts)));
        return clear;
    }

    /** How many times wider, drawn toward none; empty where it is not clear. */
    private static Optional<Estimate> pooled(double log, double sd) {
        double usual = USUAL_LOG_SD * USUAL_LOG_SD;
        double share = usual / (usual + sd * sd);
        double pooledSd = Math.sqrt(share) * sd;
        return share * log > CLEAR_SDS * pooledSd && share * log > SMALL
                ? Optional.of(Estimate.ofLog(share * log, pooledSd)) : Optional.empty();
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
        private final DirectionTally direction;
        private final PaceTally pace;
        private int putts;

        Tally() {
            this(new DirectionTally(), new PaceTally(), 0);
        }

        private Tally(DirectionTally direction, PaceTally pace, int putts) {
            this.direction = direction;
            this.pace = pace;
            this.putts = putts;
        }

        void add(Shot shot, int cell) {
            if (shot.hasPace()) {
                pace.add(shot.distanceMm(), shot.paceMm());
                direction.addTo(cell, shot.holed());
                putts++;
            } else if (!Double.isNaN(shot.finishBelowMm())) {
                pace.addBelow(shot.distanceMm(), shot.finishBelowMm());
            }
        }

        Tally plus(Tally other) {
            return new Tally(direction.plus(other.direction), pace.plus(other.pace), putts + other.putts);
        }
    }
}

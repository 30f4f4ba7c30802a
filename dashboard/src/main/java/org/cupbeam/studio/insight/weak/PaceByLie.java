package org.cupbeam.studio.insight.weak;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.cupbeam.studio.insight.make.PaceFit;
import org.cupbeam.studio.insight.make.PaceTally;
import org.cupbeam.studio.insight.shot.Lie;
import org.cupbeam.studio.insight.shot.Sessions;
import org.cupbeam.studio.insight.shot.Shot;
import org.cupbeam.studio.insight.words.Units;
import org.cupbeam.studio.insight.words.Words;

/**
 * Pace uphill, downhill and on the level, each for itself.
 *
 * @param fits of the lies that there are measured putts of
 */
public record PaceByLie(Map<Lie, PaceFit> fits) {
    private static final double CLEAR_SDS = 3;
    private static final int FEWEST = 20;
    /** Stopping this much further or less far past the hole is a matter of taste. */
    private static final double SMALL_MM = 150;

    public PaceByLie {
        fits = Map.copyOf(fits);
    }

    /** From the putts of sessions that measured pace. */
    public static PaceByLie of(Sessions sessions) {
        Map<Lie, PaceTally> tallies = new EnumMap<>(Lie.class);
        for (int session = 0; session < sessions.count(); session++) {
            for (int i = sessions.starts()[session]; sessions.measured()[session] && i < sessions.starts()[session + 1];
                    i++) {
                Shot shot = sessions.shots().get(i);
                if (shot.lie() != Lie.UNKNOWN) {
                    add(tallies.computeIfAbsent(shot.lie(), key -> new PaceTally()), shot);
                }
            }
        }
        Map<Lie, PaceFit> fits = new EnumMap<>(Lie.class);
        tallies.forEach((lie, tally) -> fits.put(lie, PaceFit.of(tally)));
        return new PaceByLie(fits);
    }

    private static void add(PaceTally tally, Shot shot) {
        if (shot.hasPace()) {
            tally.add(shot.distanceMm(), shot.paceMm());
        } else if (!Double.isNaN(shot.finishBelowMm())) {
            tally.addBelow(shot.distanceMm(), shot.finishBelowMm());
        }
    }

    /** How much further past the hole putts are sent downhill than uphill; empty unless the putts show it. */
    public Optional<Double> furtherDownhillMm() {
        PaceFit up = fits.get(Lie.UPHILL);
        PaceFit down = fits.get(Lie.DOWNHILL);
        if (up == null || down == null) {
            return Optional.empty();
        }
        double further = down.aimPastMm() - up.aimPastMm();
        boolean clear = Math.min(up.putts(), down.putts()) >= FEWEST
                && Math.abs(further) > CLEAR_SDS * Math.hypot(up.aimSdMm(), down.aimSdMm());
        return clear && Math.abs(further) > SMALL_MM ? Optional.of(further) : Optional.empty();
    }

    /** As a sentence; empty where there is nothing to say. */
    public String inWords(Units units) {
        return furtherDownhillMm().map(mm -> "Downhill putts roll on average " + units.length(mm)
                + (mm > 0 ? " further" : " less far") + " past the hole than uphill ones"
                + ", of " + Words.count(fits.values().stream().mapToInt(PaceFit::putts).sum(), "measured putt") + ".")
                .orElse("");
    }
}

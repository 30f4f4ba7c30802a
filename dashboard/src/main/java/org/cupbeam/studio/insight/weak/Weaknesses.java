package org.cupbeam.studio.insight.weak;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.cupbeam.studio.insight.chance.Estimate;
import org.cupbeam.studio.insight.chance.LogOdds;
import org.cupbeam.studio.insight.make.MakeCurve;
import org.cupbeam.studio.insight.make.Tallies;
import org.cupbeam.studio.insight.shot.Break;
import org.cupbeam.studio.insight.shot.Lie;

/**
 * A player's strengths and weaknesses by trait, each set against the others of its family. Among players who have none, at
 * most one in twenty is told of any.
 *
 * @param findings by trait, those of which there could be any
 * @param effects  how far each trait moves the log odds, drawn toward none; as far as is known, however little that is
 */
public record Weaknesses(List<Finding> findings, Map<Trait, Double> effects) {
    /**
     * So many standard deviations from none is clear. Pooling has drawn the effects together already, so that even with
     * nine of them looked at no more is called for; that one in twenty holds is measured by simulation.
     */
    private static final double CLEAR_SDS = 2;
    /** A difference this small (log odds; 5 in 100 at even chances) is none, however well known. */
    private static final double SMALL = 0.2;
    /** A difference worth knowing: 12 in 100 at even chances. */
    private static final double WORTH_KNOWING = 0.5;
    /** Of the difference alone, so many standard deviations are found in four cases of five, pooling allowed for. */
    private static final double FOUND_SDS = 3.6;
    private static final int ROUND_TO = 10;

    public Weaknesses {
        findings = List.copyOf(findings);
        effects = Map.copyOf(effects);
    }

    /** By what a putt's break and slope move its log odds. */
    public double moved(Break breaks, Lie lie) {
        double sum = 0;
        for (Trait trait : Trait.values()) {
            boolean here = trait.family() != Trait.Family.DISTANCE && trait.of(1, breaks, lie);
            sum += here ? effects.getOrDefault(trait, 0.0) : 0;
        }
        return sum;
    }

    /** From a player's putts. */
    public static Weaknesses of(Tallies tallies) {
        List<Tallies.Kind> kinds = tallies.byKind();
        MakeCurve usual = Usual.curve(tallies.byPlace(), tallies.decelerationMmPerS2());
        Pooling.Effects effects = Pooling.of(kinds, usual);
        List<Part> parts = new ArrayList<>();
        for (Trait trait : Trait.values()) {
            parts.add(Part.of(trait, kinds, usual));
        }
        List<Finding> findings = new ArrayList<>();
        for (Trait trait : Trait.values()) {
            List<Trait> others = trait.others().stream().filter(each -> parts.get(each.ordinal()).putts > 0).toList();
            if (parts.get(trait.ordinal()).putts > 0 && !others.isEmpty()) {
                findings.add(finding(trait, others, effects, parts));
            }
        }
        Map<Trait, Double> means = new EnumMap<>(Trait.class);
        for (Trait trait : Trait.values()) {
            means.put(trait, effects.mean()[trait.ordinal()]);
        }
        return new Weaknesses(findings, means);
    }

    /** Those that the putts show, the worst first. */
    public List<Finding> weak() {
        return findings.stream().filter(each -> each.verdict() == Finding.Verdict.WEAK)
                .sorted((one, other) -> Double.compare(one.perHundred(), other.perHundred())).toList();
    }

    /**
     * Putts with a trait.
     *
     * @param told what they can tell of the log odds: one over the variance
     */
    private record Part(int putts, int made, double told) {
        static Part of(Trait trait, List<Tallies.Kind> kinds, MakeCurve usual) {
            int putts = 0;
            int made = 0;
            double told = 0;
            for (Tallies.Kind kind : kinds) {
                if (trait.of(kind.tries().distanceMm(), kind.breaks(), kind.lie())) {
                    double chance = usual.at(kind.tries().distanceMm());
                    putts += kind.tries().tries();
                    made += kind.tries().made();
                    told += kind.tries().tries() * chance * (1 - chance);
                }
            }
            return new Part(putts, made, told);
        }
    }

    private static Finding finding(Trait trait, List<Trait> others, Pooling.Effects effects, List<Part> parts) {
        Part part = parts.get(trait.ordinal());
        double difference = effects.difference(trait, others);
        double sd = effects.differenceSd(trait, others);
        double holed = (double) part.made / part.putts;
        boolean clear = Math.abs(difference) > CLEAR_SDS * sd && Math.abs(difference) > SMALL;
        int needed = clear ? 0 : needed(part, others.stream().mapToDouble(each -> parts.get(each.ordinal()).told).sum());
        Finding.Verdict verdict = clear ? difference < 0 ? Finding.Verdict.WEAK : Finding.Verdict.STRONG
                : needed == 0 ? Finding.Verdict.ALIKE : Finding.Verdict.UNKNOWN;
        return new Finding(trait, verdict, part.putts, Estimate.normal(difference, sd), holed,
                LogOdds.moved(holed, -difference), needed);
    }

    /** How many more putts with the trait until a difference worth knowing would show. */
    private static int needed(Part part, double othersTold) {
        double variance = Math.pow(WORTH_KNOWING / FOUND_SDS, 2);
        double fromOthers = 1 / othersTold;
        // Where the others are too few themselves, both must grow.
        double toldNeeded = fromOthers < variance / 2 ? 1 / (variance - fromOthers) : 2 / variance;
        double more = (toldNeeded - part.told) / (part.told / part.putts);
        return more <= 0 ? 0 : (int) Math.min(Finding.MANY, ROUND_TO * Math.ceil(more / ROUND_TO));
    }
}

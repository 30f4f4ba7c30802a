package org.cupbeam.studio.insight.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.cupbeam.studio.insight.advice.Advice.Rule;
import org.cupbeam.studio.insight.turn.Turn;
import org.cupbeam.studio.insight.weak.Finding;
import org.cupbeam.studio.insight.weak.Trait;
import org.cupbeam.studio.insight.words.Words;

/** Applies the rules, each by itself, and puts what follows in the rules' order. */
public final class Adviser {
    private static final int RECENT_SESSIONS = 15;
    private static final int FEW_MORE = 200;
    private static final int MOST = 6;

    private Adviser() {
    }

    /** What follows from the findings; a page of it at most. */
    public static List<Advice> of(Findings findings) {
        List<Advice> all = new ArrayList<>();
        turn(findings).ifPresent(all::add);
        all.addAll(weak(findings));
        findings.stroke().ifPresent(stroke -> all.addAll(new StrokeAdvice(stroke, findings).all()));
        findings.fair().ifPresent(fair -> all.add(new Advice(Rule.FAIR_TEST, "Play “" + fair.best().drill().name()
                + "” with " + Words.count(fair.best().drill().balls(), "ball") + ".", fair.inWords())));
        findOut(findings).ifPresent(all::add);
        all.sort(Comparator.comparing(Advice::rule));
        return List.copyOf(all.subList(0, Math.min(MOST, all.size())));
    }

    /** One for each kind of putts that is weak, by its makes, or by its direction or pace. */
    private static List<Advice> weak(Findings findings) {
        Map<Trait, String> because = new LinkedHashMap<>();
        findings.weaknesses().weak().forEach(each -> because.put(each.trait(), each.inWords(findings.units())));
        findings.byTrait().ifPresent(all -> all.wider().forEach(each ->
                because.merge(each.trait(), each.inWords(findings.units()), (one, other) -> one + " " + other)));
        List<Advice> advice = new ArrayList<>();
        because.forEach((trait, reason) -> advice.add(new Advice(Rule.WEAKEST_FIRST,
                "Practise " + trait.words(findings.units()) + " putts first.", reason)));
        return advice;
    }

    private static Optional<Advice> turn(Findings findings) {
        List<Turn> turns = findings.turns().turns();
        if (turns.isEmpty()) {
            return Optional.empty();
        }
        Turn last = turns.get(turns.size() - 1);
        if (findings.sessions().count() - last.session() > RECENT_SESSIONS) {
            return Optional.empty();
        }
        String because = last.inWords(findings.zone());
        return Optional.of(last.better()
                ? new Advice(Rule.KEEP, "Keep what was new in grip, stance, stroke, putter or ball around then.", because)
                : new Advice(Rule.LOOK_BACK, "Look at what was new in grip, stance, stroke, putter or ball around then.",
                        because));
    }

    private static Optional<Advice> findOut(Findings findings) {
        return findings.weaknesses().findings().stream()
                .filter(each -> each.verdict() == Finding.Verdict.UNKNOWN && each.moreNeeded() <= FEW_MORE)
                .min(Comparator.comparingInt(Finding::moreNeeded))
                .map(each -> new Advice(Rule.FIND_OUT, "Putt about " + each.moreNeeded() + " more "
                        + each.trait().words(findings.units()) + " putts.", each.inWords(findings.units())));
    }
}

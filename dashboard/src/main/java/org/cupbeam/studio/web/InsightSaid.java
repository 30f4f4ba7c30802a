package org.cupbeam.studio.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.cupbeam.studio.coach.Portrait;
import org.cupbeam.studio.insight.Question;
import org.cupbeam.studio.insight.advice.Advice;
import org.cupbeam.studio.insight.chance.Estimate;
import org.cupbeam.studio.insight.plot.Stops;
import org.cupbeam.studio.insight.plot.Timeline;
import org.cupbeam.studio.insight.turn.Turn;
import org.cupbeam.studio.insight.turn.Turns;
import org.cupbeam.studio.insight.weak.Finding;
import org.cupbeam.studio.insight.weak.Grid;
import org.cupbeam.studio.insight.weak.Misses;
import org.cupbeam.studio.insight.words.Words;

/** A player's insight as a page draws and tells it: points for plots, and sentences that say the same. */
final class InsightSaid {
    private InsightSaid() {
    }

    /** @param turned the chance that a turn lies here; perHundred: more (or fewer) holed of 100 than now */
    record Session(int session, long atMs, int putts, int made, double expected, double perHundred, double low,
                   double high, double turned) {
        static Session of(Timeline.Point point) {
            Estimate per = point.perHundred();
            return new Session(point.session() + 1, point.atMs(), point.putts(), point.made(), point.expected(), per.value(),
                    per.low(), per.high(), point.turned());
        }
    }

    record Mark(int session, long atMs, boolean better, String said) {
    }

    /** @param together sessions to a point */
    record Time(int together, List<Session> points, List<Mark> marks, List<String> said) {
        static Time of(Portrait portrait, Question question) {
            Turns turns = portrait.turns();
            List<Mark> marks = turns.turns().stream().map(each ->
                    new Mark(each.session() + 1, each.atMs(), each.better(), each.inWords(question.zone()))).toList();
            List<String> said = new ArrayList<>(marks.stream().map(Mark::said).toList());
            said.add(turns.inWords());
            turns.turns().stream().filter(each -> each.bayes() > 0).forEach(each -> said.add(second(each)));
            said.add("A player who does not change is given a false turn no more than once in "
                    + String.format(Locale.ROOT, "%,d", (long) Turns.PUTTS_TO_FALSE_TURN) + " putts.");
            return new Time(portrait.timeline().together(), portrait.timeline().points().stream().map(Session::of).toList(),
                    marks, said);
        }

        private static String second(Turn turn) {
            return "A second method, which knows nothing of the first, gives " + Words.inHundred(turn.bayes())
                    + " that a turn lies at session " + (turn.session() + 1) + " or close by.";
        }
    }

    record Finishes(double limitMm, int unseen, List<Stops.Miss> misses, List<String> said) {
        static Finishes of(Portrait portrait, Question question) {
            Misses misses = portrait.misses();
            Stops stops = portrait.stops();
            List<String> said = new ArrayList<>(misses.inWords());
            if (said.isEmpty()) {
                said.add(misses.stoppedShort().tries() + " misses whose pace was seen: too few to say what they have in common.");
            }
            portrait.byTrait().ifPresent(all -> said.addAll(all.inWords(question.units())));
            portrait.stroke().ifPresent(fit -> said.add("From " + question.units().length(6_096) + " you would need three putts "
                    + "or more about " + Math.round(100 * fit.curve().threePutts(6_096, fit.curve()))
                    + " times in 100, by direction and pace as measured."));
            return new Finishes(stops.limitMm(), stops.unseen(), stops.misses(), said);
        }
    }

    /** @param more how many more putts would tell; null where they tell already */
    record Cell(String distance, String breaks, String slope, int putts, int made, Double share, Double low, Double high,
                double expected, String verdict, Integer moreNeeded, String said) {
        static Cell of(Grid.Cell cell, Question question) {
            Estimate share = cell.putts() == 0 ? null : cell.proportion().wilson();
            return new Cell(cell.distance().words(question.units()), cell.breaks().words(), cell.slope().words(), cell.putts(),
                    cell.made(), share == null ? null : share.value(), share == null ? null : share.low(),
                    share == null ? null : share.high(), cell.expected(), word(cell.verdict()),
                    cell.verdict() == Finding.Verdict.UNKNOWN ? cell.moreNeeded() : null, cell.inWords(question.units()));
        }
    }

    /** @param perHundred how many more of 100 are holed than without the difference; negative: fewer */
    record Kind(String trait, String family, int putts, String verdict, double perHundred, Integer moreNeeded, String said) {
        static Kind of(Finding finding, Question question) {
            return new Kind(finding.trait().words(question.units()), finding.trait().family().name().toLowerCase(Locale.ROOT),
                    finding.putts(), word(finding.verdict()), finding.perHundred(),
                    finding.verdict() == Finding.Verdict.UNKNOWN ? finding.moreNeeded() : null, finding.inWords(question.units()));
        }
    }

    record Strengths(List<Cell> cells, List<Kind> kinds, List<String> said) {
        static Strengths of(Portrait portrait, Question question) {
            List<Kind> kinds = portrait.weaknesses().findings().stream().map(each -> Kind.of(each, question)).toList();
            List<String> said = new ArrayList<>(kinds.stream().map(Kind::said).toList());
            if (kinds.isEmpty()) {
                said.add("Too few putts of different kinds to set one against another.");
            }
            portrait.grid().cells().stream().filter(cell -> cell.verdict() == Finding.Verdict.WEAK
                    || cell.verdict() == Finding.Verdict.STRONG).forEach(cell -> said.add(cell.inWords(question.units())));
            return new Strengths(portrait.grid().cells().stream().map(each -> Cell.of(each, question)).toList(), kinds, said);
        }
    }

    /** @param rule by which it follows, stated */
    record Next(String rule, String what, String because) {
        static Next of(Advice advice) {
            return new Next(advice.rule().words(), advice.what(), advice.because());
        }
    }

    private static String word(Finding.Verdict verdict) {
        return verdict.name().toLowerCase(Locale.ROOT);
    }
}

package org.cupbeam.studio.web;

import com.fasterxml.jackson.annotation.JsonRawValue;
import java.util.List;
import java.util.function.IntFunction;
import org.cupbeam.drill.Worded;
import org.cupbeam.studio.store.logbook.AttemptRow;
import org.cupbeam.studio.store.logbook.Change;
import org.cupbeam.studio.store.logbook.NoteRow;
import org.cupbeam.studio.store.logbook.PlayerRow;
import org.cupbeam.studio.store.logbook.RunRow;

/** The record's rows as the pages read them: putts with the wire's own keys, null for what is not known. */
final class LogbookSaid {
    private LogbookSaid() {
    }

    /** @param next where the next page begins; null on the last */
    record Listed<T>(String zone, List<T> rows, String next) {
    }

    /** @param name null once forgotten */
    record Named(int id, String name) {
    }

    record Player(int id, String name, String hand, String units, String remark, long createdMs, int runs, Long lastMs,
                  Integer mergedInto) {
        static Player of(PlayerRow row) {
            return new Player(row.id(), row.name(), row.hand(), row.units(), row.remark(), row.createdMs(), row.runs(),
                    row.lastMs(), row.mergedInto());
        }
    }

    /** @param drill null where the run's beginning never came; what it ended with is null while it goes on */
    record Run(int id, Named player, String studio, String lane, Drill drill, String breaks, String slope, Double limitMm,
               long startedMs, Long endedMs, String endedBy, Integer stationsCleared, Integer attempts, Integer holed,
               Double meanMissMm, Integer duel, Boolean won) {
        record Drill(String name, @JsonRawValue String terms) {
        }

        static Run of(RunRow row) {
            RunRow.Result end = row.result();
            return new Run(row.id(), new Named(row.playerId(), row.player()), row.source().studio(), row.source().lane(),
                    row.drill() == null ? null : new Drill(row.drill(), row.terms()), word(row.tags().breaks()),
                    word(row.tags().slope()), number(row.limitMm()), row.startedMs(), end == null ? null : end.endedMs(),
                    end == null ? null : word(end.endedBy()), end == null ? null : end.stationsCleared(),
                    end == null ? null : end.attempts(), end == null ? null : end.holed(),
                    end == null ? null : number(end.meanMissMm()), row.duel(), end == null ? null : end.won());
        }
    }

    /** An attempt in a run, with what was said of it and changed in it. */
    record Putt(int id, int run, long atMs, int station, double stationMm, int visit, int ball, Ended attempt,
                boolean counts, List<Note> notes, List<Changed> trail) {
        static Putt of(AttemptRow row, List<Note> notes, List<Changed> trail) {
            AttemptRow.Of at = row.of();
            return new Putt(row.id(), at.run(), row.atMs(), at.station(), at.stationMm(), at.visit(), at.ball(),
                    Ended.of(row.putt()), row.counts(), notes, trail);
        }
    }

    /** As an attempt is on the wire. */
    record Ended(String outcome, Double finishMm, Double finishSdMm, Double[] finishBetweenMm, boolean overshoot,
                 Double speedAtHoleMmS, Double paceMm, boolean rim, String how) {
        static Ended of(org.cupbeam.event.Putt putt) {
            return new Ended(putt.outcome().word(), number(putt.finishMm()), number(putt.finishSdMm()),
                    new Double[] {number(putt.lowMm()), number(putt.highMm())}, putt.overshoot(),
                    number(putt.speedAtHoleMmPerS()), number(putt.paceMm()), putt.rim(), putt.how().word());
        }
    }

    record Note(int id, Integer player, Integer run, Integer attempt, String author, String words, long atMs) {
        static Note of(NoteRow row) {
            return new Note(row.id(), row.player(), row.run(), row.attempt(), row.author(), row.words(), row.atMs());
        }
    }

    /** @param was of a run that was given to somebody else, the name of who had it; {@code became} likewise */
    record Changed(String what, Integer run, Integer attempt, String was, String became, String by, String reason,
                   long atMs) {
        static Changed of(Change change, IntFunction<String> nameOf) {
            boolean numbers = change.what().equals("reassigned");
            return new Changed(change.what(), change.run(), change.attempt(),
                    numbers ? name(change.was(), nameOf) : change.was(),
                    numbers ? name(change.became(), nameOf) : change.became(), change.by(), change.reason(), change.atMs());
        }

        private static String name(String number, IntFunction<String> nameOf) {
            return number == null ? null : nameOf.apply(Integer.parseInt(number));
        }
    }

    private static String word(Worded constantOrNull) {
        return constantOrNull == null ? null : constantOrNull.word();
    }

    private static Double number(double value) {
        return Double.isNaN(value) ? null : value;
    }
}

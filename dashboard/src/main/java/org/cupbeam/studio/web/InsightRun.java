package org.cupbeam.studio.web;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.cupbeam.drill.Drill;
import org.cupbeam.drill.Supply;
import org.cupbeam.studio.coach.Portrait;
import org.cupbeam.studio.insight.run.DuelOdds;
import org.cupbeam.studio.insight.run.FairTest;
import org.cupbeam.studio.insight.run.Forecast;
import org.cupbeam.studio.insight.run.HeadStart;
import org.cupbeam.studio.store.logbook.RunRow;

/**
 * A run of the drill foreseen; shares of one.
 *
 * @param atLeast  by stations, from 0, the chance to clear so many or more
 * @param day      of the player's last runs; {@code runs} are those of this drill on that day, the first first
 * @param options  numbers of balls with either supply, the fairest first
 * @param duel     against whom one was asked for; null without
 */
record InsightRun(List<Double> atLeast, List<String> said, String day, List<Standing> runs, FairStation fair, Duel duel) {

    /** @param standing the share of the player's own runs that would be worse */
    record Standing(int run, long atMs, int stations, int attempts, double standing, String said) {
    }

    record FairStation(int station, String said, List<Option> options) {
        record Option(int balls, String supply, double chance) {
        }

        static FairStation of(FairTest fair) {
            return new FairStation(fair.station(), fair.inWords(), fair.options().stream().map(each -> new Option(
                    each.drill().balls(), each.drill().supply() == Supply.EVERY_STATION ? "at every station" : "for the whole run",
                    each.chance())).toList());
        }
    }

    /** @param first the chance that the player wins; level: all but the misses equal */
    record Duel(int against, String name, double first, double second, double level, String said, int headStart,
                boolean toFirst, String headStartSaid) {
        static Duel of(Forecast one, Forecast other, String name, int against, String otherName) {
            DuelOdds odds = DuelOdds.of(one, other, 0);
            HeadStart start = HeadStart.of(one, other);
            return new Duel(against, otherName, odds.first(), odds.second(), odds.level(), odds.inWords(name, otherName),
                    start.stations(), start.firstWeaker(), start.inWords(name, otherName));
        }
    }

    /** @param rival null where no duel was asked for */
    static InsightRun of(InsightAsked asked, Portrait portrait, Portrait rival) {
        Forecast forecast = portrait.forecast().orElse(null);
        if (forecast == null) {
            return new InsightRun(List.of(), List.of("This drill can go in more ways than can be worked out."), null, List.of(),
                    null, null);
        }
        ZoneId zone = asked.question().zone();
        LocalDate day = asked.runs().isEmpty() ? null : day(asked.runs().get(0), zone);
        List<Standing> standings = new ArrayList<>();
        for (int i = asked.runs().size() - 1; i >= 0; i--) {
            RunRow run = asked.runs().get(i);
            if (run.result() != null && day(run, zone).equals(day) && asked.question().drill().equals(drill(run))) {
                standings.add(standing(run, forecast));
            }
        }
        return new InsightRun(IntStream.rangeClosed(0, forecast.stations()).mapToObj(forecast::atLeast).toList(),
                List.of(forecast.inWords()), day == null ? null : day.toString(), standings,
                portrait.fair().map(FairStation::of).orElse(null),
                rival == null || rival.forecast().isEmpty() ? null : Duel.of(forecast, rival.forecast().get(),
                        name(asked.player().name()), asked.rival().id(), name(asked.rival().name())));
    }

    private static Standing standing(RunRow run, Forecast forecast) {
        int stations = run.result().stationsCleared();
        int attempts = run.result().attempts();
        return new Standing(run.id(), run.startedMs(), stations, attempts, forecast.standing(stations, attempts),
                forecast.inWords(stations, attempts));
    }

    private static Drill drill(RunRow run) {
        return run.terms() == null ? null : InsightDrills.read(run.terms());
    }

    private static LocalDate day(RunRow run, ZoneId zone) {
        return Instant.ofEpochMilli(run.startedMs()).atZone(zone).toLocalDate();
    }

    private static String name(String orNull) {
        return orNull == null ? "a player who was forgotten" : orNull;
    }
}

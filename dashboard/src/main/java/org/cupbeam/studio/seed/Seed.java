package org.cupbeam.studio.seed;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.cupbeam.event.Data;
import org.cupbeam.event.Event;
import org.cupbeam.event.EventJson;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.ingest.Batch;
import org.cupbeam.studio.ingest.EventLog;
import org.cupbeam.studio.seed.LaneBook.Written;
import org.cupbeam.studio.store.Keeper;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.league.LeagueBook;
import org.cupbeam.studio.usage.StudioTime;

/** Fills a store with a made-up year. */
public final class Seed {
    /**
     * What was put in.
     *
     * @param players  what is true of each
     * @param attempts in all, those that no longer count included
     */
    public record Planted(List<Truth> players, int events, int attempts, int runs, int duels, int corrections) {
        public Planted {
            players = List.copyOf(players);
        }
    }

    private static final int BATCH = 4_000;
    private static final long ON_THE_WAY_MS = 200;

    private final EventLog log;
    private final List<Arrival> waiting = new ArrayList<>();
    private int events;
    private int attempts;
    private int runs;
    private int duels;
    private int corrections;

    private Seed(EventLog log) {
        this.log = log;
    }

    /**
     * Fills a store that has nothing of the made-up studio yet with the year before {@code end}: what the lanes saw,
     * when the studio is open, what was wrong with its rigs, and what the coach wrote.
     *
     * @param seed equal ones give equal years
     */
    public static Planted fill(Store store, Instant end, long seed, Size size) {
        Year year = new Year(end, seed, size);
        Planted planted = fill(new Keeper(store), year);
        store.writing(h -> new StudioTime(Scenario.ZONE, Scenario.HOURS).set(h, end.toEpochMilli()));
        Mishaps.fill(store, end, seed, size);
        CoachsDesk.fill(store, year.people(), seed, size);
        store.writing(h -> LeagueBook.open(h, Scenario.league(end), Scenario.COACH, end.toEpochMilli()));
        return planted;
    }

    /**
     * Puts what the lanes saw in that year into a log.
     *
     * @param seed equal ones give equal years
     */
    public static Planted fill(EventLog log, Instant end, long seed, Size size) {
        return fill(log, new Year(end, seed, size));
    }

    private static Planted fill(EventLog log, Year year) {
        Seed filling = new Seed(log);
        while (year.goesOn()) {
            year.nextDay().forEach(filling::take);
        }
        filling.commit();
        return new Planted(year.people().stream().map(Person::truth).toList(), filling.events, filling.attempts,
                filling.runs, filling.duels, filling.corrections);
    }

    private void take(Written written) {
        Event event = written.event();
        count(event.data());
        waiting.add(new Arrival(event.source(), event.sequence(), event.time(), event, null, EventJson.encode(event),
                Instant.ofEpochMilli(written.atMs() + ON_THE_WAY_MS)));
        if (waiting.size() >= BATCH) {
            commit();
        }
    }

    private void count(Data data) {
        events++;
        attempts += data instanceof Data.Attempt ? 1 : 0;
        runs += data instanceof Data.RunStarted ? 1 : 0;
        duels += data instanceof Data.RunStarted started && started.of().duel() != null && started.of().order() == 1
                ? 1 : 0;
        corrections += data instanceof Data.Correction ? 1 : 0;
    }

    private void commit() {
        if (!waiting.isEmpty()) {
            log.commit(new Batch(waiting, List.of(), List.of()));
            waiting.clear();
        }
    }
}

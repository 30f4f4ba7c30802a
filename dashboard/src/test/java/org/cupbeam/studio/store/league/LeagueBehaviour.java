package org.cupbeam.studio.store.league;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.cupbeam.drill.Drill;
import org.cupbeam.event.Tags;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.league.Remembered;
import org.cupbeam.studio.league.Week;
import org.cupbeam.studio.store.PlayerBook;
import org.cupbeam.studio.store.RecordBook;
import org.cupbeam.studio.store.StoreFixture;
import org.cupbeam.studio.store.Who;
import org.junit.jupiter.api.Test;

/** Leagues and what they ask of the record, whichever database it lives in. Week 1 ends on Sunday, 29 November 2026. */
abstract class LeagueBehaviour extends StoreFixture {
    private static final long DAY_S = 86_400;
    private static final Who INES = new Who("Ines", null, 1);
    private final ScriptedLane home = new ScriptedLane("home", "one", "j1");
    private final ScriptedLane mill = new ScriptedLane("mill", "two", "j2");
    private final Remembered remembered = new Remembered();
    private int runs;

    @Test
    void areKeptAsTheyWereOpenedTheLatestFirst() {
        play(mill, "Ada", 1, 6, 1, 100);
        League one = league("Autumn", 4, 1, Set.of());
        League other = new League("Winter", ScriptedLane.LADDER, new Tags(null, Tags.Slope.UPHILL), ZoneId.of("Europe/Berlin"),
                LocalDate.of(2026, 12, 21), 2, 3, Set.of("mill"));
        store.writing(h -> LeagueBook.open(h, one, "Kim", 5));
        store.writing(h -> LeagueBook.open(h, other, "Kim", 6));

        assertThat(book()).containsExactly(new LeagueBook.Kept(2, other, 1, "Kim", 6),
                new LeagueBook.Kept(1, one, 1, "Kim", 5));
        assertThat(find(3)).isEmpty();
    }

    @Test
    void aStudioThatWasNeverHeardIsRefusedAndNothingIsOpened() {
        assertThatThrownBy(() -> store.writing(h -> LeagueBook.open(h, league("Autumn", 1, 1, Set.of("nowhere")), "Kim", 5)))
                .hasMessage("studio: nowhere has not been heard here; choose one that has");
        assertThat(count("league")).isZero();
    }

    @Test
    void twoWhoChangeOneDoNotUndoOneAnothers() {
        int id = open(league("Autumn", 4, 1, Set.of()));

        assertThat(change(id, "Late autumn", 5)).hasValueSatisfying(kept -> {
            assertThat(kept.version()).isEqualTo(2);
            assertThat(kept.league().weeks()).isEqualTo(5);
        });
        assertThat(change(id, "Mine", 2)).isEmpty();
        assertThat(find(id).orElseThrow().league().name()).isEqualTo("Late autumn");
    }

    @Test
    void whatWasTakenOffCanBePutBack() {
        int id = open(league("Autumn", 4, 1, Set.of()));

        assertThat(takeOff(id)).isTrue();
        assertThat(takeOff(id)).isFalse();
        assertThat(book()).isEmpty();
        assertThat(putBack(id)).isTrue();
        assertThat(putBack(id)).isFalse();
        assertThat(book()).hasSize(1);
    }

    @Test
    void findsEachPlayersBestRunsOfEachWeekAtAllStudios() {
        play(home, "Ada", 2, 12, 2, 300);
        play(home, "Ada", 3, 20, 3, 300);
        play(mill, "ada", 3, 19, 3, 300);
        play(mill, "Bo", 1, 7, 1, 300);
        home.passes(5 * DAY_S);
        play(home, "Ada", 1, 7, 1, 250.5);

        assertThat(in(league("Autumn", 3, 1, Set.of()))).extracting(Played::week, Played::name, Played::studio, Played::cleared,
                Played::attempts, Played::meanMissMm, Played::ofSoMany).containsExactly(
                tuple(1, "Ada", "mill", 3, 19, 300.0, 3),
                tuple(1, "Bo", "mill", 1, 7, 300.0, 1),
                tuple(2, "Ada", "home", 1, 7, 250.5, 1));
        assertThat(in(league("Autumn", 1, 2, Set.of()))).extracting(Played::attempts).containsExactly(19, 20, 7);
        assertThat(in(league("Autumn", 1, 1, Set.of("home")))).extracting(Played::attempts).containsExactly(20);
        assertThat(in(league("Autumn", 1, 1, Set.of("home", "mill")))).hasSize(2);
    }

    @Test
    void aRunIsOfTheWeekInWhichItBegan() {
        home.passes(4 * DAY_S + 5 * 3_600 - 60); // Sunday, 23:59 in Berlin, is 22:59 UTC: the lane began at 18:00
        commit(home.starts("late", null, "Ada", 1));
        home.passes(120);
        commit(home.ends("late", null, "Ada", 1, 6, 1, 10));
        play(home, "Bo", 1, 6, 1, 10);

        assertThat(in(league("Autumn", 2, 1, Set.of()))).extracting(Played::week, Played::name).containsExactly(
                tuple(1, "Ada"), tuple(2, "Bo"));
    }

    @Test
    void theSameRulesUnderAnotherNameCountAndOtherRulesUnderTheSameNameDoNot() {
        String trap = "x\",\"stations\":{\"first_mm\":914.4";
        play(home.plays(called(trap, 6)), "Ada", 1, 6, 1, 10);
        play(home.plays(called("Ladder", 5)), "Bo", 1, 5, 1, 10);
        play(home.plays(called("\u5F20", 6)), "Cy", 1, 6, 1, 10);

        assertThat(in(league("Autumn", 1, 1, Set.of()))).extracting(Played::name).containsExactly("Ada", "Cy");
    }

    @Test
    void runsThatWereStoppedOrGoOnOrLieOtherwiseDoNotCount() {
        play(home, "Ada", 1, 6, 1, 10);
        commit(home.starts("on", null, "Bo", 1), home.holes("on", null, "Bo", 1));
        play(home, "Cy", 5, 6, 5, 10);
        store.writing(h -> h.execute("UPDATE run SET ended_by = 'stopped' WHERE stations_cleared = 5"));

        assertThat(in(league("Autumn", 1, 1, Set.of()))).extracting(Played::name).containsExactly("Ada");
        assertThat(in(tagged(Tags.Break.LEFT_TO_RIGHT, Tags.Slope.UPHILL))).hasSize(1);
        assertThat(in(tagged(null, Tags.Slope.DOWNHILL))).isEmpty();
        assertThat(in(tagged(Tags.Break.STRAIGHT, null))).isEmpty();
    }

    @Test
    void whatIsPutRightIsInTheTableAtOnce() {
        commit(home.starts("r", null, "Ada", 1), home.holes("r", null, "Ada", 1), home.misses("r", null, "Ada", 2, 300),
                home.misses("r", null, "Ada", 2, 300), home.ends("r", null, "Ada", 1, 3, 1, 300));
        assertThat(in(league("Autumn", 1, 1, Set.of()))).extracting(Played::cleared, Played::attempts)
                .containsExactly(tuple(1, 3));

        new RecordBook(store).voids(1, new Who("Ines", "ball was kicked", 7));
        assertThat(in(league("Autumn", 1, 1, Set.of()))).extracting(Played::cleared, Played::attempts)
                .containsExactly(tuple(0, 2));
        play(home, "Bo", 0, 6, 0, 100);
        new RecordBook(store).reassigns(1, 2, new Who("Ines", "that was Bo", 8));
        assertThat(in(league("Autumn", 1, 1, Set.of()))).extracting(Played::name, Played::ofSoMany)
                .containsExactly(tuple("Bo", 2));
    }

    @Test
    void whoeverIsForgottenIsInItNoLongerNorIsTheNameInTheLeagues() {
        play(home, "Zebedee", 3, 6, 3, 10);
        play(home, "Bo", 1, 6, 1, 10);
        int id = open(league("Zebedee against the rest", 1, 1, Set.of()));
        store.writing(h -> h.execute("UPDATE league SET changed_by = 'Zebedee'"));

        new PlayerBook(store).forget(1, INES);

        assertThat(in(league("Autumn", 1, 1, Set.of()))).extracting(Played::name).containsExactly("Bo");
        LeagueBook.Kept kept = find(id).orElseThrow();
        assertThat(kept.league().name()).isEqualTo("forgotten player 1 against the rest");
        assertThat(kept.changedBy()).isEqualTo("forgotten player 1");
    }

    @Test
    void tellsUpToWhenEachLaneIsHeardAndWhetherItIsPuttedOn() {
        play(mill, "Bo", 1, 6, 1, 10);
        commit(home.puttsOutsideAnyRun(), home.passes(60).puttsOutsideAnyRun());
        commit(new ScriptedLane("home", "one", "older").boots("b", NOW).setsClock(NOW.minusSeconds(9 * DAY_S)));

        long nowMs = home.wall().toEpochMilli();
        List<LaneHeard> heard = store.read(h -> LaneHeard.all(h, nowMs - 3_600_000, nowMs + 900_000));
        assertThat(heard).containsExactly(
                new LaneHeard("home", "one", true, nowMs), new LaneHeard("mill", "two", false, mill.wall().toEpochMilli()));
    }

    private List<LeagueBook.Kept> book() {
        return store.read(LeagueBook::all);
    }

    private Optional<LeagueBook.Kept> find(int id) {
        return store.read(h -> LeagueBook.find(h, id));
    }

    private Optional<LeagueBook.Kept> change(int id, String name, int weeks) {
        return store.write(h -> LeagueBook.change(h, id, 1, name, weeks, "Lou", 9));
    }

    private boolean takeOff(int id) {
        return store.write(h -> LeagueBook.takeOff(h, id, 9));
    }

    private boolean putBack(int id) {
        return store.write(h -> LeagueBook.putBack(h, id));
    }

    private int open(League league) {
        return store.write(h -> LeagueBook.open(h, league, "Kim", 5)).id();
    }

    private List<Played> in(League league) {
        return store.read(h -> Anew.read(h, league, Long.MAX_VALUE / 2_000_000, remembered, "all that"));
    }

    private void play(ScriptedLane lane, String player, int cleared, int attempts, int holed, double meanMissMm) {
        String run = "r" + ++runs;
        commit(lane.starts(run, null, player, 1), lane.passes(60).ends(run, null, player, cleared, attempts, holed, meanMissMm));
    }

    private static Drill called(String name, int balls) {
        Drill ladder = ScriptedLane.LADDER;
        return new Drill(name, ladder.stations(), balls, ladder.supply(), ladder.holed(), ladder.limitMm(), ladder.penalty(), ladder.turns());
    }

    private static League tagged(Tags.Break breaks, Tags.Slope slope) {
        return new League("Autumn", ScriptedLane.LADDER, new Tags(breaks, slope), ZoneId.of("Europe/Berlin"), LocalDate.of(2026, 11, 23), 1, 1,
                Set.of());
    }

    private static League league(String name, int weeks, int runs, Set<String> studios) {
        return new League(name, ScriptedLane.LADDER, Tags.NONE, ZoneId.of("Europe/Berlin"), LocalDate.of(2026, 11, 23), weeks, runs, studios);
    }
}

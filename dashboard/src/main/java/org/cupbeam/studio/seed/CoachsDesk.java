package org.cupbeam.studio.seed;

import java.util.List;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import org.cupbeam.studio.store.NoteBook;
import org.cupbeam.studio.store.PlayerBook;
import org.cupbeam.studio.store.RecordBook;
import org.cupbeam.studio.store.Sight;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.Who;
import org.cupbeam.studio.store.logbook.AttemptRow;
import org.cupbeam.studio.store.logbook.Attempts;
import org.cupbeam.studio.store.logbook.LogFilter;
import org.cupbeam.studio.store.logbook.PlayerRow;
import org.cupbeam.studio.store.logbook.Players;
import org.cupbeam.studio.store.logbook.RunRow;
import org.cupbeam.studio.store.logbook.Runs;

/** What the coach writes down of the players, and puts right in the record. */
final class CoachsDesk {
    private static final List<String> REMARKS = List.of("comes straight from work", "likes to be beaten by the clock",
            "plays off 14", "plays off 22", "new putter since spring", "asks for lag putts");
    private static final List<String> ON_RUNS = List.of("Head stayed down for once. Keep that.",
            "Rushed after the first miss.", "Same routine before every ball, and it showed.",
            "Tried the longer backswing; pace was all over the place.", "Good company, little practice.");
    private static final List<String> ON_PUTTS = List.of("Read it two balls out, and it was three.", "Pure.",
            "Looked up.");
    private static final int LATEST = 60;

    private final Store store;
    private final RandomGenerator random;
    private final NoteBook notes;

    private CoachsDesk(Store store, long seed) {
        this.store = store;
        this.random = new SplittableRandom(seed + 1);
        this.notes = new NoteBook(store);
    }

    /** Every second player has a remark, every regular some notes. */
    static void fill(Store store, List<Person> people, long seed, Size size) {
        CoachsDesk desk = new CoachsDesk(store, seed);
        for (int i = 0; i < people.size(); i++) {
            Person person = people.get(i);
            boolean regular = i < size.regulars();
            store.read(h -> Players.named(h, Sight.ALL, person.name())).ifPresent(row -> {
                desk.describe(row, person);
                if (regular) {
                    desk.watch(row);
                }
            });
        }
    }

    private void describe(PlayerRow row, Person person) {
        String remark = random.nextInt(2) == 0 ? null : REMARKS.get(random.nextInt(REMARKS.size()));
        new PlayerBook(store).describe(row.id(), person.hand(), person.units(), remark);
    }

    private void watch(PlayerRow player) {
        LogFilter his = LogFilter.ALL.player(player.id());
        List<RunRow> runs = store.read(h -> Runs.page(h, his, null, LATEST)).rows();
        List<AttemptRow> putts = store.read(h -> Attempts.page(h, his, null, LATEST)).rows();
        for (int i = 0; i < 3 && !runs.isEmpty(); i++) {
            RunRow run = runs.get(random.nextInt(runs.size()));
            notes.onRun(run.id(), one(ON_RUNS), coach(run.startedMs()));
        }
        if (!putts.isEmpty()) {
            AttemptRow putt = putts.get(random.nextInt(putts.size()));
            notes.onAttempt(putt.id(), one(ON_PUTTS), coach(putt.atMs()));
        }
        putts.stream().filter(AttemptRow::counts).skip(random.nextInt(LATEST)).findFirst().ifPresent(putt ->
                new RecordBook(store).voids(putt.id(), new Who(Scenario.COACH, "was a demonstration", putt.atMs() + 900_000)));
    }

    private String one(List<String> words) {
        return words.get(random.nextInt(words.size()));
    }

    private static Who coach(long atMs) {
        return new Who(Scenario.COACH, null, atMs + 600_000);
    }
}

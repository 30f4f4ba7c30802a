package org.cupbeam.studio.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Random;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.cupbeam.drill.Worded;
import org.cupbeam.event.Tags;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.store.sums.PuttSums;
import org.junit.jupiter.api.Test;

/** A player's putts as insight reads them, and what tells that they have changed, whichever database they lie in. */
abstract class PlayerPuttBehaviour extends StoreFixture {
    private static final Who KIM = new Who("Kim", "a dog ran by", NOW.toEpochMilli());
    private final ScriptedLane lane = new ScriptedLane("one", "j1");

    @Test
    void readsThePlayersPuttsInOrderOfTimeWithWhatWasMeasured() {
        commit(lane.starts("r1", null, "Ada", 1), lane.passes(10).holes("r1", null, "Ada", 1),
                lane.starts("r2", null, "Bo", 1), lane.holes("r2", null, "Bo", 1),
                lane.passes(10).misses("r1", null, "Ada", 2, 417.3), lane.puttsOutsideAnyRun());

        List<PlayerPutt> putts = putts(1);
        assertThat(putts).extracting(PlayerPutt::distanceMm, PlayerPutt::holed, PlayerPutt::finishMm,
                PlayerPutt::finishBelowMm, PlayerPutt::paceMm, PlayerPutt::speedAtHoleMmPerS, PlayerPutt::rim).containsExactly(
                tuple(914.4, true, Double.NaN, Double.NaN, 402.3, 812.5, false),
                tuple(1828.8, false, 417.3, Double.NaN, 417.3, 1250.0, false));
        assertThat(putts).allSatisfy(putt -> assertThat(putt.tags()).isEqualTo(ScriptedLane.TAGS));
        assertThat(putts).allSatisfy(putt -> assertThat(putt.stimpFt()).isEqualTo(9.4));
        assertThat(putts.get(1).atMs() - putts.get(0).atMs()).isEqualTo(10_000);
    }

    @Test
    void tellsOfAMissThatNoBeamSawOnlyWhereItMustLieBelow() {
        commit(lane.starts("r1", null, "Ada", 1), lane.misses("r1", null, "Ada", 1, 100), lane.holes("r1", null, "Ada", 1));
        store.writing(h -> h.execute("UPDATE attempt SET finish_mm = NULL, finish_high_mm = -210, pace_mm = NULL, "
                + "speed_at_hole_mm_s = NULL, stimp_ft = NULL, stimp_sd_ft = NULL"));

        assertThat(putts(1)).extracting(PlayerPutt::finishMm, PlayerPutt::finishBelowMm, PlayerPutt::paceMm,
                PlayerPutt::stimpSdFt).containsExactly(tuple(Double.NaN, -210.0, Double.NaN, Double.NaN),
                tuple(Double.NaN, Double.NaN, Double.NaN, Double.NaN));
    }

    @Test
    void knowsEveryPairOfTags() {
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1));
        for (Tags.Break breaks : Tags.Break.values()) {
            for (Tags.Slope slope : Tags.Slope.values()) {
                store.writing(h -> h.execute("UPDATE attempt SET breaks = ?, slope = ?", breaks.word(), slope.word()));
                assertThat(putts(1).get(0).tags()).isEqualTo(new Tags(breaks, slope));
            }
            store.writing(h -> h.execute("UPDATE attempt SET breaks = ?, slope = NULL", breaks.word()));
            assertThat(putts(1).get(0).tags()).isEqualTo(new Tags(breaks, null));
        }
    }

    /** The statement packs several columns into one: read here one by one, as the table has them. */
    @Test
    void readsWhatIsThereWhateverIsMissing() {
        long seed = Long.getLong("cupbeam.seed", System.nanoTime());
        System.out.println("cupbeam.seed=" + seed);
        Random random = new Random(seed);
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1));
        for (int id = 2; id < 300; id++) {
            int row = id;
            store.writing(h -> h.execute("INSERT INTO attempt (id, journal_id, sequence, lane_id, at_ms, player_id, station_mm, holed, "
                    + "rim, overshoot, entered, finish_mm, finish_high_mm, pace_mm, speed_at_hole_mm_s, breaks, slope, stimp_ft, "
                    + "stimp_sd_ft, counts) VALUES (?, 1, ?, 1, ?, 1, ?, ?, ?, 0, 0, ?, ?, ?, ?, ?, ?, ?, ?, ?)", row, 1_000 + row,
                    random.nextInt(40) * 1_000L - 20_000, maybe(random, 9_000), random.nextInt(2), random.nextInt(2),
                    maybe(random, 2_000), maybe(random, 2_000), maybe(random, 2_000), maybe(random, 3_000),
                    maybe(random, "left-to-right", "right-to-left", "straight"), maybe(random, "uphill", "downhill", "level"),
                    maybe(random, 13), maybe(random, 1), random.nextInt(4) == 0 ? 0 : 1));
        }

        assertThat(putts(1)).isEqualTo(all("SELECT * FROM attempt WHERE counts = 1 ORDER BY at_ms, id").stream()
                .filter(row -> row.get("station_mm") != null && (double) row.get("station_mm") > 0).map(PlayerPuttBehaviour::plain)
                .toList());
    }

    private static PlayerPutt plain(Map<String, Object> row) {
        boolean holed = (int) row.get("holed") == 1;
        boolean below = !holed && row.get("finish_mm") == null;
        Object stimp = row.get("stimp_ft");
        return new PlayerPutt(((Number) row.get("at_ms")).longValue(), (double) row.get("station_mm"), holed,
                holed ? Double.NaN : number(row.get("finish_mm")), below ? number(row.get("finish_high_mm")) : Double.NaN,
                number(row.get("pace_mm")), number(row.get("speed_at_hole_mm_s")), (int) row.get("rim") == 1,
                new Tags(worded(Tags.Break.values(), row.get("breaks")), worded(Tags.Slope.values(), row.get("slope"))),
                number(stimp), stimp == null ? Double.NaN : number(row.get("stimp_sd_ft")));
    }

    private static <T extends Worded> T worded(T[] all, Object wordOrNull) {
        return Arrays.stream(all).filter(each -> each.word().equals(wordOrNull)).findFirst().orElse(null);
    }

    private static double number(Object orNull) {
        return orNull == null ? Double.NaN : ((Number) orNull).doubleValue();
    }

    /** In thousandths, as greens are told. */
    private static Double maybe(Random random, int below) {
        return random.nextInt(4) == 0 ? null : (Double) (random.nextInt(below * 1_000) / 1_000.0);
    }

    private static String maybe(Random random, String... words) {
        return random.nextInt(4) == 0 ? null : words[random.nextInt(words.length)];
    }

    @Test
    void leavesOutWhatWasTakenBackOrSetNotToCount() {
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1), lane.misses("r1", null, "Ada", 2, 50),
                lane.holes("r1", null, "Ada", 2), lane.takesBack(4));
        assertThat(putts(1)).hasSize(2);
        new RecordBook(store).voids(1, KIM);

        assertThat(putts(1)).extracting(PlayerPutt::finishMm).containsExactly(50.0);
    }

    @Test
    void theVersionChangesWithWhateverChangesThePuttsAndWithNothingElse() {
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1),
                lane.starts("r2", null, "Bo", 1), lane.holes("r2", null, "Bo", 1));
        PuttsVersion first = version(1);
        commit(lane.holes("r2", null, "Bo", 2), lane.starts("r3", null, "Ada", 1));
        assertThat(version(1)).as("of another player").isEqualTo(first);

        commit(lane.holes("r3", null, "Ada", 1));
        PuttsVersion second = changed(first);
        commit(lane.takesBack(lane.sequence()));
        PuttsVersion third = changed(second);
        new RecordBook(store).voids(1, KIM);
        PuttsVersion fourth = changed(third);
        new RecordBook(store).restores(1, KIM);
        PuttsVersion fifth = changed(fourth);
        new RecordBook(store).reassigns(2, 1, KIM);
        assertThat(putts(1)).as("Bo's are Ada's now").hasSize(3);
        changed(fifth);
    }

    @Test
    void anotherPlayersCorrectionsLeaveTheVersionAsItIs() {
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1),
                lane.starts("r2", null, "Bo", 1), lane.holes("r2", null, "Bo", 1), lane.misses("r2", null, "Bo", 2, 9));
        PuttsVersion ada = version(1);
        PuttsVersion bo = version(2);
        commit(lane.takesBack(lane.sequence()));
        new RecordBook(store).voids(2, KIM);
        new PlayerBook(store).rename(2, "Bodo", KIM);

        assertThat(version(2)).isNotEqualTo(bo);
        assertThat(version(1)).isEqualTo(ada);
        assertThat(version(99)).as("of nobody").isEqualTo(version(98));
    }

    /** Whatever is done to the record, in whatever order: no player's putts change behind an unchanged version. */
    @Test
    void noPuttChangesBehindAnUnchangedVersion() {
        long seed = Long.getLong("cupbeam.seed", System.nanoTime());
        System.out.println("cupbeam.seed=" + seed);
        Random random = new Random(seed);
        RecordBook book = new RecordBook(store);
        lane.boots("boot-2", Instant.parse("2000-01-01T00:00:00Z"));
        commit(lane.starts("r1", null, "Ada", 1), lane.starts("r2", null, "Bo", 1), lane.starts("r3", null, "Cy", 1));
        for (int step = 0; step < 120; step++) {
            List<List<PlayerPutt>> puttsBefore = IntStream.rangeClosed(1, 3).mapToObj(this::putts).toList();
            List<PuttsVersion> before = IntStream.rangeClosed(1, 3).mapToObj(this::version).toList();
            String deed = step == 60 ? clockIsSet() : deed(random, book);
            for (int i = 0; i < 3; i++) {
                if (!putts(i + 1).equals(puttsBefore.get(i))) {
                    assertThat(version(i + 1)).as("%s, step %d, player %d", deed, step, i + 1).isNotEqualTo(before.get(i));
                }
            }
        }
    }

    private String clockIsSet() {
        commit(lane.setsClock(NOW));
        return "clock";
    }

    private String deed(Random random, RecordBook book) {
        int run = 1 + random.nextInt(3);
        int attempt = 1 + random.nextInt(Math.max(1, count("attempt")));
        String name = List.of("Ada", "Bo", "Cy").get(run - 1);
        int what = random.nextInt(7);
        try {
            switch (what) {
                case 0, 1 -> commit(lane.passes(7).holes("r" + run, null, name, 1));
                case 2 -> commit(lane.passes(7).misses("r" + run, null, name, 2, random.nextInt(900)));
                case 3 -> commit(random.nextBoolean() ? lane.takesBack(lane.sequence()) : lane.voids(lane.sequence(), "Kim", "-"));
                case 4 -> book.voids(attempt, KIM);
                case 5 -> book.restores(attempt, KIM);
                default -> book.reassigns(run, 1 + random.nextInt(3), KIM);
            }
        } catch (IllegalArgumentException | NoSuchElementException refused) {
            return "refused";
        }
        return "deed " + what;
    }

    @Test
    void aClockThatIsSetRightChangesTheVersion() {
        lane.boots("boot-2", Instant.parse("2000-01-01T00:00:00Z"));
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1));
        PuttsVersion before = version(1);
        commit(lane.passes(60).setsClock(NOW));

        changed(before);
        assertThat(putts(1).get(0).atMs()).isEqualTo(NOW.minusSeconds(60).toEpochMilli());
    }

    @Test
    void countsEachPlayersPuttsByDistance() {
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1), lane.misses("r1", null, "Ada", 1, 50),
                lane.holes("r1", null, "Ada", 2), lane.starts("r2", null, "Bo", 1), lane.holes("r2", null, "Bo", 1),
                lane.takesBack(6), lane.puttsOutsideAnyRun());
        Map<Integer, List<PlayerTallies>> all = store.read(h -> PlayerTallies.since(h, 0));

        assertThat(all).containsOnlyKeys(1);
        assertThat(all.get(1)).containsExactly(new PlayerTallies(914.4, 2, 1), new PlayerTallies(1828.8, 1, 1));
        Map<Integer, List<PlayerTallies>> none = store.read(h -> PlayerTallies.since(h, NOW.toEpochMilli() + PuttSums.SEASON_MS));
        assertThat(none).as("none since").isEmpty();
    }

    private PuttsVersion changed(PuttsVersion before) {
        PuttsVersion now = version(1);
        assertThat(now).isNotEqualTo(before);
        return now;
    }

    private PuttsVersion version(int player) {
        return store.read(h -> PuttsVersion.of(h, player));
    }

    private List<PlayerPutt> putts(int player) {
        return store.read(h -> PlayerPutt.all(h, player, null, Function.identity()));
    }
}

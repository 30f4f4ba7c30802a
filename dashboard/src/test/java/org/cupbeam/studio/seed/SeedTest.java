package org.cupbeam.studio.seed;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.HexFormat;
import java.util.List;
import org.cupbeam.studio.ingest.Batch;
import org.cupbeam.studio.ingest.EventLog;
import org.cupbeam.studio.seed.Truth.Course;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.Keeper;
import org.cupbeam.studio.store.Store;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SeedTest {
    private static final Instant END = Instant.parse("2026-11-25T12:00:00Z");
    private static final Size SMALL = new Size(2, 6, 5, 6);

    @TempDir
    static Path folder;
    private static Store store;
    private static Seed.Planted planted;

    @BeforeAll
    static void fill() {
        store = Store.open(Database.file(folder.resolve("year.db")));
        planted = Seed.fill(new Keeper(store), END, 5, SMALL);
    }

    @AfterAll
    static void close() {
        store.close();
    }

    @Test
    void givesEqualYearsForEqualSeedsAndOthersForOthers() {
        Size tiny = new Size(2, 2, 1, 2);

        assertThat(digest(7, tiny)).isEqualTo(digest(7, tiny)).isNotEqualTo(digest(8, tiny));
    }

    @Test
    void keepsAllThatItMade() {
        assertThat(planted.attempts()).isGreaterThan(20_000);
        assertThat(count("event")).isEqualTo(planted.events());
        assertThat(count("attempt")).isEqualTo(planted.attempts());
        assertThat(count("run")).isEqualTo(planted.runs());
        assertThat(count("duel")).isEqualTo(planted.duels()).isPositive();
        assertThat(count("correction")).isEqualTo(planted.corrections()).isPositive();
        assertThat(count("event WHERE problem IS NOT NULL OR synchronised = 0")).isZero();
        assertThat(count("event WHERE synchronised = 2")).isPositive();
        assertThat(count("missing")).isZero();
        assertThat(count("lane")).isEqualTo(SMALL.lanes());
    }

    @Test
    void scoresRunsAsTheirAttemptsAddUp() {
        String kept = "SELECT count(*) FROM attempt a WHERE a.run_id = r.id AND a.counts = 1";

        assertThat(count("run r WHERE r.ended_ms IS NOT NULL")).isEqualTo(planted.runs());
        assertThat(count("run r WHERE r.attempts <> (" + kept + ")")).isZero();
        assertThat(count("run r WHERE r.holed <> (" + kept + " AND a.holed = 1)")).isZero();
    }

    @Test
    void playsOnlyWhileTheStudioIsOpenAndNeverAfterTheEnd() {
        List<Long> times = store.read(h -> h.createQuery("SELECT at_ms FROM attempt").mapTo(Long.class).list());

        assertThat(times).allMatch(ms -> ms < END.toEpochMilli() && open(ms));
    }

    @Test
    void hasWeeksOfEveryKindOfPlay() {
        assertThat(strings("SELECT DISTINCT ended_by FROM run")).contains("out-of-balls", "cleared-all", "duel", "stopped");
        assertThat(strings("SELECT DISTINCT name FROM drill")).hasSize(4);
        assertThat(strings("SELECT DISTINCT breaks FROM run")).contains("left-to-right", "right-to-left", "straight", null);
        assertThat(count("attempt WHERE run_id IS NULL")).isPositive();
        assertThat(count("attempt WHERE entered = 1")).isPositive();
        assertThat(count("attempt WHERE rim = 1")).isPositive();
    }

    @Test
    void showsWhatIsPlanted() {
        Truth better = turning(0);
        Truth worse = turning(1);

        assertThat(makeRateChange(better)).isGreaterThan(0.04);
        assertThat(makeRateChange(worse)).isLessThan(-0.04);
        assertThat(planted.players()).filteredOn(Truth::plain).hasSizeGreaterThan(SMALL.casuals());
        Truth weak = planted.players().get(4);
        assertThat(weak.weaknesses()).containsExactly(Weakness.LEFT_TO_RIGHT);
        assertThat(makeRate(weak, "a.breaks = 'left-to-right'")).isLessThan(
                makeRate(weak, "a.breaks = 'right-to-left'") - 0.08);
    }

    private static Truth turning(int number) {
        Truth truth = planted.players().get(number);
        assertThat(truth.course()).isEqualTo(Course.TURNS);
        return truth;
    }

    private double makeRateChange(Truth truth) {
        long turn = truth.turns().get(0).toEpochMilli();
        return makeRate(truth, "a.at_ms >= " + turn) - makeRate(truth, "a.at_ms < " + turn);
    }

    /** From one to three and a half metres. */
    private double makeRate(Truth truth, String where) {
        return store.read(h -> h.createQuery("SELECT avg(a.holed * 1.0) FROM attempt a JOIN player p ON p.id = a.player_id "
                + "WHERE p.name = :name AND a.station_mm BETWEEN 1000 AND 3500 AND " + where)
                .bind("name", truth.player()).mapTo(Double.class).one());
    }

    private static boolean open(long atMs) {
        ZonedDateTime local = Instant.ofEpochMilli(atMs).atZone(Scenario.ZONE);
        long lateMs = Duration.ofMinutes(20).toMillis();
        return Scenario.HOURS.on(local.toLocalDate(), Scenario.ZONE).stream().anyMatch(span ->
                span.from().toEpochMilli() <= atMs && atMs < span.to().toEpochMilli() + lateMs);
    }

    private static int count(String what) {
        return store.read(h -> h.createQuery("SELECT count(*) FROM " + what).mapTo(Integer.class).one());
    }

    private static List<String> strings(String sql) {
        return store.read(h -> h.createQuery(sql).mapTo(String.class).list());
    }

    private static String digest(long seed, Size size) {
        try {
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            Seed.fill(new EventLog() {
                @Override
                public List<Kept> kept() {
                    return List.of();
                }

                @Override
                public void commit(Batch batch) {
                    batch.arrivals().forEach(each -> sha.update(each.payload()));
                }
            }, END, seed, size);
            return HexFormat.of().formatHex(sha.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}

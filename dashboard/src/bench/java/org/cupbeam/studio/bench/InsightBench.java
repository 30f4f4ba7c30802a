package org.cupbeam.studio.bench;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Locale;
import java.util.Random;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.studio.coach.Coach;
import org.cupbeam.studio.coach.ShotReader;
import org.cupbeam.studio.insight.Question;
import org.cupbeam.studio.insight.words.Units;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.PuttsVersion;
import org.cupbeam.studio.store.Store;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;

/**
 * How long insight takes for a player with so many attempts among ten times as many of others: reading them, all of it in a
 * fresh process, all of it once warmed up, and where nothing has changed. In ms of the wall clock, with the load beside it.
 *
 * <p>Arguments: attempts of the player; {@code warm} or {@code cold}; a JDBC URL of an empty PostgreSQL database instead of
 * SQLite.
 */
public final class InsightBench {
    private static final int OTHERS = 9;
    private static final int TIMES = 15;
    private static final double STEP_MM = 914.4;

    private InsightBench() {
    }

    public static void main(String[] args) throws Exception {
        int putts = Integer.parseInt(args[0]);
        boolean warm = args[1].equals("warm");
        Path folder = Files.createTempDirectory("insight-bench");
        try (Store store = Store.open(args.length > 2 ? Database.at(args[2]) : Database.file(folder.resolve("studio.db")))) {
            fill(store, putts);
            measure(store, putts, warm);
        } finally {
            delete(folder);
        }
    }

    private static void measure(Store store, int putts, boolean warm) throws InterruptedException {
        Coach coach = new Coach(store, InstantSource.system());
        Question question = Question.about(DrillFile.preset("ladder"), STEP_MM, Units.METRIC, ZoneOffset.UTC);
        if (warm) {
            coach.warmUp(player -> question);
            awaitWarm();
        }
        changes(store); // of this player nothing is known any more
        String first = warm ? "first, after the warm-up" : "first, in a fresh process";
        double firstCpu = processorMs();
        say(putts, first, time(() -> coach.portrait(1, question)));
        say(putts, first + ", processor time", processorMs() - firstCpu);
        double[] cpu = new double[TIMES];
        double[] same = new double[TIMES];
        double[] changed = new double[TIMES];
        double[] read = new double[TIMES];
        double[] readCpu = new double[TIMES];
        double[] version = new double[TIMES];
        for (int i = 0; i < TIMES; i++) {
            version[i] = time(() -> store.read(h -> PuttsVersion.of(h, 1)));
            same[i] = time(() -> coach.portrait(1, question));
            changes(store);
            double before = processorMs();
            changed[i] = time(() -> coach.portrait(1, question));
            cpu[i] = processorMs() - before;
            double beforeRead = processorMs();
            read[i] = time(() -> store.read(h -> ShotReader.all(h, 1, null)));
            readCpu[i] = processorMs() - beforeRead;
        }
        say(putts, "a look at the version", version);
        say(putts, "nothing changed", same);
        say(putts, "reading the putts", read);
        say(putts, "the same, processor time", readCpu);
        say(putts, "all of it, after a change", changed);
        say(putts, "the same, processor time", cpu);
        say(putts, "the studio's players counted", time(() -> new Coach(store, InstantSource.system()).peers(STEP_MM)));
    }

    private static void changes(Store store) {
        store.writing(h -> h.execute("UPDATE player SET putts_changed = putts_changed + 1 WHERE id = 1"));
    }

    /** Until the coach's own thread has nothing left to do. */
    private static void awaitWarm() throws InterruptedException {
        Thread aside = Thread.getAllStackTraces().keySet().stream().filter(each -> each.getName().equals("insight")).findFirst()
                .orElseThrow();
        for (int idle = 0; idle < 4; idle = aside.getState() == Thread.State.WAITING ? idle + 1 : 0) {
            Thread.sleep(250);
        }
    }

    private static double time(Runnable task) {
        long start = System.nanoTime();
        task.run();
        return (System.nanoTime() - start) / 1e6;
    }

    private static double processorMs() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() / 1e6;
    }

    private static void say(int putts, String what, double... ms) {
        Arrays.sort(ms);
        System.out.printf(Locale.ROOT, "%,d putts, %s: median %.1f ms, worst %.1f ms (load %.1f)%n", putts, what,
                ms[ms.length / 2], ms[ms.length - 1], ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
    }

    /** Putts of eleven players turn by turn, as they come in a studio: no one's lie side by side. */
    private static void fill(Store store, int putts) {
        store.writing(h -> {
            h.execute("INSERT INTO studio (id, name) VALUES (1, 'bench')");
            h.execute("INSERT INTO lane (id, studio_id, name) VALUES (1, 1, 'one')");
            h.execute("INSERT INTO journal (id, lane_id, name, seen_ms) VALUES (1, 1, 'j', 0)");
            for (int player = 1; player <= OTHERS + 1; player++) {
                h.execute("INSERT INTO player (id, name, name_key, created_ms) VALUES (?, ?, ?, 0)", player, "p" + player,
                        "p" + player);
                h.execute("INSERT INTO run (id, journal_id, lane_id, name, player_id, play_order, started_sequence, started_ms) "
                        + "VALUES (?, 1, 1, ?, ?, 1, 1, ?)", player, "r" + player, player, player);
            }
        });
        Random random = new Random(1);
        long now = System.currentTimeMillis();
        int all = putts * (OTHERS + 1);
        for (int from = 0; from < all; from += 50_000) {
            int start = from;
            store.writing(h -> rows(h, random, start, Math.min(all, start + 50_000), now - 25L * all));
        }
    }

    private static void rows(Handle h, Random random, int from, int to, long firstMs) {
        PreparedBatch batch = h.prepareBatch("INSERT INTO attempt (id, journal_id, sequence, lane_id, at_ms, player_id, "
                + "station, station_mm, visit, ball, balls_left, holed, finish_mm, finish_sd_mm, finish_low_mm, "
                + "finish_high_mm, overshoot, speed_at_hole_mm_s, pace_mm, rim, entered, breaks, slope, stimp_ft, "
                + "stimp_sd_ft) VALUES (?, 1, ?, 1, ?, ?, ?, ?, 1, 1, 5, ?, ?, ?, ?, ?, 0, ?, ?, 0, 0, ?, ?, 10.1, 0.2)");
        String[] breaks = {"left-to-right", "right-to-left", "straight"};
        String[] slopes = {"uphill", "downhill", "level"};
        for (int i = from; i < to; i++) {
            int station = 1 + random.nextInt(9);
            double distanceMm = STEP_MM * station;
            double paceMm = 300 + 0.09 * distanceMm * random.nextGaussian();
            boolean holed = random.nextDouble() < 1 / (1 + Math.pow(distanceMm / 2400, 2));
            boolean unseen = !holed && paceMm < -200;
            Double finish = holed || unseen ? null : (Double) paceMm;
            batch.add(i + 1, i + 1, firstMs + 25L * i + i / 600 * 10_000_000L / 1000, 1 + i % (OTHERS + 1), station, distanceMm,
                    holed ? 1 : 0, finish, finish == null ? null : 8.0, finish == null ? null : finish - 16,
                    holed ? null : (Double) (unseen ? -200 : paceMm + 16),
                    unseen ? null : (Double) Math.sqrt(Math.max(0, 1100 * paceMm)), unseen ? null : (Double) paceMm,
                    breaks[i / 7 % 3], slopes[i / 11 % 3]);
        }
        batch.execute();
    }

    private static void delete(Path folder) throws IOException {
        try (var files = Files.list(folder)) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        }
        Files.delete(folder);
    }
}

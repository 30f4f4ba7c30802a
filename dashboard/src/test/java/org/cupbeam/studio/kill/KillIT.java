package org.cupbeam.studio.kill;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.LongStream;
import org.cupbeam.drill.DrillFile;
import org.cupbeam.drill.Play;
import org.cupbeam.event.Data;
import org.cupbeam.event.Event;
import org.cupbeam.event.EventJson;
import org.cupbeam.event.Putt;
import org.cupbeam.event.Score;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Lane, broker and host are killed (signal 9) at random moments through a recorded evening, the broker at times losing
 * what it keeps. While the lane is dead the evening stops; it goes on from the last quiet moment, so that a ball in
 * flight at the kill is putted again. Afterwards each putt is in the store once, in order, with the drill's score.
 * {@code -Dcupbeam.seed=…} repeats the choices, {@code -Dcupbeam.kills=…} makes them more.
 */
@Timeout(value = 30, unit = TimeUnit.MINUTES)
class KillIT {
    private static final boolean NIGHTLY = Boolean.getBoolean("cupbeam.nightly");
    private static final int KILLS = Integer.getInteger("cupbeam.kills", NIGHTLY ? 200 : 20);
    private static final long SEED = Long.getLong("cupbeam.seed", System.nanoTime());
    /** So long does the evening last for each kill, on the wall: a quarter of it is left when the last one has come. */
    private static final double S_PER_KILL = 1.35;
    private static final int MOST_APART_MS = 2_000;
    private static final int MOST_DOWN_MS = 800;
    private static final String DRILL = """
            name = "three and on"
            [stations]
            at_mm = [900, 1800, 2700, 3600]
            [balls]
            count = 3
            supply = "every-station"
            [advance]
            holed = 1
            [overshoot]
            limit_mm = 400
            penalty = "back-one"
            """;

    @TempDir
    private Path folder;
    private final Random dice = new Random(SEED);
    private final Map<String, Integer> killed = new TreeMap<>();
    private Fleet fleet;
    private Program lane;
    private LaneLives lives;

    @Test
    void eachPuttOfTheEveningIsInTheStoreOnceInOrderWithTheRightScore() throws Exception {
        RecordedEvening evening = RecordedEvening.named("busy-full");
        double speed = Math.max(1, Math.round(evening.endNs() / 1e9 / (KILLS * S_PER_KILL)));
        Path drill = Files.writeString(folder.resolve("drill.toml"), DRILL);
        Play begun = Play.begin(DrillFile.read(drill), List.of("Ana", "Bo"), evening.limitMm());
        System.out.println("seed " + SEED + ", " + KILLS + " kills, the evening " + speed + " times as fast");
        try (Fleet all = new Fleet(folder)) {
            fleet = all;
            lives = new LaneLives(evening, speed);
            lane = fleet.lane(() -> {
                List<String> options = new ArrayList<>(lives.options());
                options.addAll(List.of("--drill", drill.toString(), "--players", "Ana,Bo"));
                return options;
            });
            killThroughTheEvening();
            toItsEnd(begun);
        } finally {
            lane.close();
        }
        System.out.println("seed " + SEED + ": killed " + killed + "; " + lives.putts().size()
                + " putts, each in the store once, in order; " + lives.inFlight() + " more rolled beside one as the lane was killed");
    }

    private void killThroughTheEvening() throws Exception {
        List<Program> programs = List.of(fleet.broker, fleet.host, lane);
        for (Program each : programs) {
            each.start();
        }
        TreeMap<Long, Program> down = new TreeMap<>();
        for (int i = 0; i < KILLS; i++) {
            long nextNs = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(dice.nextInt(MOST_APART_MS));
            Program victim = programs.get(dice.nextInt(programs.size()));
            boolean forgets = dice.nextBoolean();
            int downMs = dice.nextInt(MOST_DOWN_MS);
            while (System.nanoTime() < nextNs || down.containsValue(victim)) {
                startWhatIsDue(down);
                TimeUnit.MILLISECONDS.sleep(5);
            }
            assertThat(lives.ahead()).as("putts that are left: the evening goes on to the last kill").isPositive();
            kill(victim, forgets && victim == fleet.broker);
            down.put(System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(downMs), victim);
        }
        while (!down.isEmpty()) {
            startWhatIsDue(down);
            TimeUnit.MILLISECONDS.sleep(5);
        }
    }

    private static void startWhatIsDue(TreeMap<Long, Program> down) throws Exception {
        while (!down.isEmpty() && down.firstKey() < System.nanoTime()) {
            down.pollFirstEntry().getValue().start();
        }
    }

    private void kill(Program victim, boolean forgets) throws Exception {
        long nowNs = System.nanoTime();
        long readyNs = victim.readyNs();
        victim.kill();
        killed.merge(victim.name + (forgets ? ", emptied" : ""), 1, Integer::sum);
        if (victim == lane) {
            lives.ended(Kept.events(fleet.journal()), readyNs == 0 ? 0 : nowNs - readyNs);
        }
        if (forgets) {
            fleet.emptyBroker();
        }
    }

    private void toItsEnd(Play begun) throws Exception {
        int due = lives.putts().size() + lives.ahead();
        int withinS = NIGHTLY ? 300 : 90;
        Fleet.until(() -> "the evening's last putt is in the store, " + puttsStored() + " of " + due + " are"
                + state(), withinS, () -> puttsStored() >= due);
        lives.ended(Kept.events(fleet.journal()), 0);
        Truth truth = new Truth(begun, lives.putts());
        Fleet.until(() -> "the board shows " + truth.standing() + state(), 20,
                () -> Truth.standing(fleet.shown()).equals(truth.standing()));
        assertThat(fleet.shown().state()).isEqualTo(truth.isOver() ? Score.State.OVER : Score.State.PLAYING);
        assertThat(lane.end()).as("status, ended by signal 15").isEqualTo(128 + 15);
        assertThat(fleet.host.end()).isEqualTo(128 + 15);
        hold(truth);
    }

    private String state() {
        return "\nhost: " + fleet.host.said() + "\nlane: " + lane.said();
    }

    private int puttsStored() {
        String putts = fleet.ask("SELECT count(*) FROM attempt");
        return putts.isEmpty() ? 0 : Integer.parseInt(putts);
    }

    /** The store against the journal, byte for byte, and both against the truth. */
    private void hold(Truth truth) throws Exception {
        List<byte[]> journal = Kept.events(fleet.journal());
        List<Event> events = new ArrayList<>();
        for (byte[] each : journal) {
            events.add(EventJson.decode(each));
        }
        assertThat(Truth.lines(events)).isEqualTo(truth.lines());
        assertThat(events).extracting(Event::sequence).containsExactlyElementsOf(
                LongStream.rangeClosed(1, events.size()).boxed().toList());
        try (Kept store = new Kept(fleet.store())) {
            assertThat(store.rows("PRAGMA integrity_check")).containsExactly("ok");
            assertThat(store.rows("SELECT name, stored FROM journal"))
                    .containsExactly(events.get(0).source().journal() + "|" + events.size());
            assertThat(store.rows("SELECT envelope FROM event ORDER BY sequence")).isEqualTo(
                    journal.stream().map(each -> new String(each, StandardCharsets.UTF_8)).toList());
            assertThat(store.rows("SELECT count(*) FROM missing UNION ALL SELECT count(*) FROM dead_letter "
                    + "UNION ALL SELECT count(*) FROM event WHERE problem IS NOT NULL")).containsOnly("0");
            assertThat(store.rows("SELECT a.sequence, a.holed FROM attempt a WHERE a.counts = 1 ORDER BY a.sequence"))
                    .isEqualTo(events.stream().filter(each -> each.data() instanceof Data.Attempt)
                            .map(each -> each.sequence() + "|" + (holed(each) ? 1 : 0)).toList());
        }
    }

    private static boolean holed(Event event) {
        return ((Data.Attempt) event.data()).putt().outcome() == Putt.Outcome.HOLED;
    }
}

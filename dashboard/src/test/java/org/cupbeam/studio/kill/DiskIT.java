package org.cupbeam.studio.kill;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.cupbeam.event.Data;
import org.cupbeam.event.Event;
import org.cupbeam.event.EventJson;
import org.cupbeam.track.Attempt;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The host's disk, or the lane's, is full for a while, or goes read-only, while a recorded evening is played: real processes, real
 * file systems. Full: it is said, pages go on answering, and with room again each putt is in the store once, in order, and
 * understood. Read-only: it is said; once the card is mended and the program started again, nothing that was written is lost.
 */
@Timeout(value = 5, unit = TimeUnit.MINUTES)
class DiskIT {
    private static final boolean ALL = Boolean.getBoolean("cupbeam.nightly") || Boolean.getBoolean("cupbeam.disks");
    private static final int ROUNDS = Integer.getInteger("cupbeam.rounds", ALL ? 3 : 1);
    private static final double SPEED = ALL ? 20 : 60;
    private static final List<String> PAGES = List.of("/lanes", "/board/north/bay-3", "/health", "/api/health", "/api/players", "/runs",
            "/usage", "/alive", "/ready");
    private static final Pattern STORE_SAYS = Pattern.compile("\"store\":\"([^\"]*)\"");
    private static final Pattern FAULTS = Pattern.compile("\"faults\":\\[(\"[^]]*)]");

    @TempDir
    private Path folder;
    private final HttpClient client = HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(5)).build();
    private RecordedEvening evening;
    private Fleet fleet;
    private Program lane;

    @BeforeEach
    void prepare() throws Exception {
        evening = RecordedEvening.named("clean-standard");
        fleet = new Fleet(folder);
        lane = fleet.lane(() -> lane(0));
    }

    @AfterEach
    void end() throws Exception {
        if (fleet != null) { // the evening may not be on this machine
            lane.close();
            fleet.close();
        }
    }

    private List<String> lane(long fromNs) {
        return List.of("--rig", evening.rigFile().toString(), "--trace", evening.trace().toString(), "--from",
                String.format(Locale.ROOT, "%.9f", fromNs / 1e9), "--speed", Double.toString(SPEED));
    }

    private void begin() throws Exception {
        fleet.broker.start();
        fleet.host.start();
        Fleet.until(fleet.host::said, 60, () -> fleet.host.readyNs() != 0);
        lane.start();
        Fleet.until(() -> "five putts are stored: " + said(), 60, () -> stored() >= 5);
    }

    @Test
    void aHostWhoseDiskIsFullSaysSoAnswersAndHasEachPuttOnceThereIsRoom() throws Exception {
        try (MountedDisk disk = MountedDisk.ofMemory(folder.resolve("host"), 16)) {
            begin();
            for (int round = 0; round < ROUNDS; round++) {
                disk.fill();
                Fleet.until(() -> "the health page says that the store's disk is full: " + said(), 60,
                        () -> found(STORE_SAYS).contains("its disk is full"));
                assertThat(fleet.host.said()).contains("the store keeps nothing at present (store ").contains("its disk is full");
                int before = stored();
                for (int i = 0; i < 4; i++) {
                    pagesAnswer();
                    TimeUnit.MILLISECONDS.sleep(500);
                }
                assertThat(stored()).as("nothing of a batch").isEqualTo(before);
                disk.makeRoom();
                Fleet.until(() -> "the store keeps events again: " + said(), 30, () -> found(STORE_SAYS).isEmpty() && stored() > before);
            }
            toItsEnd();
            assertThat(fleet.host.said()).contains("the store keeps events again, after ");
        }
    }

    @Test
    void aLaneWhoseDiskIsFullSaysSoAndWritesEachPuttInOrderOnceThereIsRoom() throws Exception {
        try (MountedDisk disk = MountedDisk.ofMemory(folder.resolve("lane"), 16)) {
            begin();
            for (int round = 0; round < ROUNDS; round++) {
                disk.fill();
                Fleet.until(() -> "the health page says that the lane can write nothing down: " + said(), 60,
                        () -> found(FAULTS).contains("nothing can be written down, and what happens waits"));
                assertThat(lane.said()).contains("the disk is full").contains("entries wait, and it is tried again every second");
                int before = stored();
                for (int i = 0; i < 4; i++) {
                    pagesAnswer();
                    TimeUnit.MILLISECONDS.sleep(500);
                }
                disk.makeRoom();
                Fleet.until(() -> "putts come again: " + said(), 30, () -> found(FAULTS).isEmpty() && stored() > before);
            }
            toItsEnd();
        }
    }

    @Test
    void aHostWhoseCardGoesReadOnlySaysSoAndAnswersAndHasEachPuttOnceItIsMended() throws Exception {
        Assumptions.assumeTrue(ALL, "in the nightly profile, or with -Dcupbeam.disks=true");
        try (MountedDisk disk = MountedDisk.ofFile(folder.resolve("host"), 32)) {
            begin();
            disk.turnReadOnly();
            Fleet.until(() -> "the health page says that the store cannot be written: " + said(), 60, () -> !found(STORE_SAYS).isEmpty());
            System.out.println("read-only host says: " + found(STORE_SAYS));
            for (int i = 0; i < 6; i++) {
                pagesAnswer();
                TimeUnit.MILLISECONDS.sleep(500);
            }
            fleet.host.end();
            disk.mend();
            fleet.host.start();
            toItsEnd();
        }
    }

    @Test
    void aLaneWhoseCardGoesReadOnlySaysSoAndLosesNothingThatWasWritten() throws Exception {
        Assumptions.assumeTrue(ALL, "in the nightly profile, or with -Dcupbeam.disks=true");
        try (MountedDisk disk = MountedDisk.ofFile(folder.resolve("lane"), 32)) {
            begin();
            disk.turnReadOnly();
            Fleet.until(() -> "the health page says that the lane can write nothing down: " + said(), 60,
                    () -> found(FAULTS).contains("nothing can be written down, and what happens waits"));
            System.out.println("read-only lane says: " + found(FAULTS));
            pagesAnswer();
            lane.end();
            assertThat(lane.said()).contains("entries could not be written");
            disk.mend();
            List<Attempt> written = evening.from(0).subList(0, attempts().size());
            assertThat(times(attempts())).isEqualTo(timesOf(written));
            long next = evening.quietAfter(written.get(written.size() - 1).resolvedNs());
            lane = fleet.lane(() -> lane(next));
            lane.start();
            List<Attempt> all = new ArrayList<>(written);
            all.addAll(evening.from(next));
            toItsEnd(all);
        }
    }

    private void toItsEnd() throws Exception {
        toItsEnd(evening.from(0));
    }

    /** Each putt that the tracker finds is in the journal once, in order, and the store holds the journal byte for byte, understood. */
    private void toItsEnd(List<Attempt> putts) throws Exception {
        Fleet.until(() -> putts.size() + " putts are stored, " + stored() + " are: " + said(), 180, () -> stored() >= putts.size());
        assertThat(lane.end()).isEqualTo(128 + 15);
        Fleet.until(() -> "all of the journal is stored", 30, () -> fleet.ask("SELECT count(*) FROM event").equals("" + journal().size()));
        assertThat(fleet.host.end()).isEqualTo(128 + 15);
        assertThat(times(attempts())).isEqualTo(timesOf(putts));
        try (Kept store = new Kept(fleet.store())) {
            assertThat(store.rows("PRAGMA integrity_check")).containsExactly("ok");
            assertThat(store.rows("SELECT envelope FROM event ORDER BY sequence")).isEqualTo(
                    journal().stream().map(each -> new String(each, StandardCharsets.UTF_8)).toList());
            assertThat(store.rows("SELECT count(*) FROM missing UNION ALL SELECT count(*) FROM dead_letter "
                    + "UNION ALL SELECT count(*) FROM event WHERE problem IS NOT NULL")).containsOnly("0");
            assertThat(store.rows("SELECT count(*) FROM attempt WHERE counts = 1")).containsExactly("" + putts.size());
        }
        System.out.println(putts.size() + " putts, each in the store once, in order, and understood");
    }

    private List<byte[]> journal() throws Exception {
        return Kept.events(fleet.journal());
    }

    private List<Event> attempts() throws Exception {
        List<Event> attempts = new ArrayList<>();
        for (byte[] each : journal()) {
            Event event = EventJson.decode(each);
            if (event.data() instanceof Data.Attempt) {
                attempts.add(event);
            }
        }
        return attempts;
    }

    private static List<Long> times(List<Event> attempts) {
        return attempts.stream().map(each -> each.data().stamp().monotonicNs()).toList();
    }

    private static List<Long> timesOf(List<Attempt> putts) {
        return putts.stream().map(Attempt::timeNs).toList();
    }

    private int stored() {
        String putts = fleet.ask("SELECT count(*) FROM attempt");
        return putts.isEmpty() ? 0 : Integer.parseInt(putts);
    }

    private void pagesAnswer() throws Exception {
        for (String each : PAGES) {
            assertThat(get(each).statusCode()).as(each + ": " + get(each).body()).isEqualTo(200);
        }
    }

    /** What the health page is told; empty where it says nothing of that kind. */
    private String found(Pattern what) throws Exception {
        Matcher found = what.matcher(get("/api/health").body());
        return found.find() ? found.group(1) : "";
    }

    private HttpResponse<String> get(String path) throws Exception {
        return client.send(HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + fleet.pagesPort + path)).timeout(Duration.ofSeconds(10))
                .build(), HttpResponse.BodyHandlers.ofString());
    }

    private String said() {
        return "\nhost: " + fleet.host.said() + "\nlane: " + lane.said();
    }
}

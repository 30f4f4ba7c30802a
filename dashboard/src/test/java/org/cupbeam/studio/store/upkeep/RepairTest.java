package org.cupbeam.studio.store.upkeep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.cupbeam.event.Event;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.store.CheckSum;
import org.cupbeam.studio.store.Database;
import org.cupbeam.studio.store.NoteBook;
import org.cupbeam.studio.store.PlayerBook;
import org.cupbeam.studio.store.RecordBook;
import org.cupbeam.studio.store.Settings;
import org.cupbeam.studio.store.Store;
import org.cupbeam.studio.store.Who;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Whatever was done to a store's file, its repair keeps every event whose bytes are still somewhere, makes up none, is sound, and
 * is filled up by the lanes. What is whole is told from the bytes before and after, without the repair's own code.
 * {@code -Dcupbeam.damages=N} does it N times, {@code -Dcupbeam.seed=N} the same again.
 */
class RepairTest {
    private static final int DAMAGES = Integer.getInteger("cupbeam.damages", Boolean.getBoolean("cupbeam.nightly") ? 200 : 10);
    private static final long SEED = Long.getLong("cupbeam.seed", System.nanoTime());
    private static final Clock WALL = Clock.fixed(Instant.parse("2026-11-26T07:00:00Z"), ZoneOffset.UTC);
    private static final Evenings EVENINGS = new Evenings(16);
    private static final int PAGE = 4096;

    private static final String ABOUT = "coalesce(p.name, '') || '|' || coalesce(r.name || rj.name, '') || '|' || coalesce(aj.name || a.sequence, '') FROM ";
    private static final String JOINED = " x LEFT JOIN player p ON p.id = x.player_id LEFT JOIN run r ON r.id = x.run_id LEFT JOIN journal rj "
            + "ON rj.id = r.journal_id LEFT JOIN attempt a ON a.id = x.attempt_id LEFT JOIN journal aj ON aj.id = a.journal_id ORDER BY x.at_ms, 1";
    private static final List<String> STAFFS = List.of(
            "SELECT x.author || x.words || '|' || " + ABOUT + "note" + JOINED,
            "SELECT x.what || x.by_whom || '|' || coalesce(x.reason, '') || coalesce(x.became, '') || '|' || " + ABOUT + "amendment" + JOINED,
            "SELECT name || value FROM setting ORDER BY 1",
            "SELECT id || coalesce(name, '') || '|' || coalesce(name_key, '') || coalesce(hand, '') || coalesce(remark, '') || "
                    + "coalesce(merged_into, '') || coalesce(forgotten_ms, '') FROM player ORDER BY id",
            "SELECT name_key || player_id FROM player_alias ORDER BY 1");

    /** What is done to a file or its log. */
    private enum Harm { CUT, FLIPPED, SCRIBBLED, ZEROED, SWAPPED, HEAD }

    @TempDir
    private static Path made;
    @TempDir
    private Path folder;
    private final Map<String, String> texts = new TreeMap<>();
    private Path file;
    private Path log;

    @BeforeEach
    void know() {
        file = folder.resolve("studio.db");
        log = folder.resolve("studio.db-wal");
        for (Event each : EVENINGS.all()) {
            texts.put(key(each), new String(ScriptedLane.json(each), StandardCharsets.UTF_8));
        }
    }

    @Test
    void whateverIsDoneToItEveryEventThatIsWholeIsKeptAndNoneIsMadeUp() throws Exception {
        Map<String, Integer> came = new TreeMap<>();
        for (int i = 0; i < DAMAGES; i++) {
            long seed = SEED + i;
            try {
                came.merge(once(new Random(seed)), 1, Integer::sum);
            } catch (AssertionError | Exception e) {
                throw new AssertionError("seed " + seed + ": -Dcupbeam.seed=" + seed + " -Dcupbeam.damages=1", e);
            }
        }
        System.out.println("seed " + SEED + ", " + DAMAGES + " damages: " + came);
    }

    private String once(Random dice) throws Exception {
        for (Path each : List.of(file, log, folder.resolve("studio.db-shm"))) {
            Files.deleteIfExists(each);
        }
        boolean killed = dice.nextInt(3) == 0;
        fill(killed);
        byte[][] before = {Files.readAllBytes(file), Files.exists(log) ? Files.readAllBytes(log) : new byte[0]};
        int which = killed && dice.nextInt(3) == 0 ? 1 : 0;
        Harm harm = Harm.values()[dice.nextInt(Harm.values().length)];
        byte[][] after = before.clone();
        after[which] = harm(before[which].clone(), harm, dice);
        Files.write(which == 0 ? file : log, after[which]);
        Set<String> whole = whole(before, after);
        String how = harm + (which == 0 ? "" : " in the log");

        Repair.Done done;
        try {
            done = Repair.of(file, WALL);
        } catch (IOException refused) {
            assertThat(refused).hasMessageContaining("nothing was changed");
            assertThat(whole).as(how + ": " + refused.getMessage()).isEmpty();
            assertThat(Files.readAllBytes(file)).isEqualTo(after[0]);
            return how + ", nothing left";
        }
        if (done.is() == null) {
            return how + ", sound nevertheless";
        }
        if (which == 0) {
            assertThat(Files.readAllBytes(done.aside())).as("the damaged one is kept").isEqualTo(after[0]);
        }
        Set<String> kept = kept();
        assertThat(kept).as(how + ": whole in the file " + whole.size()).containsAll(whole);
        assertThat(Checkup.of(Database.file(file)).troubles()).as(how + " " + done.said()).isEmpty();
        assertThat(attempts()).as("attempts, of which none is told twice").doesNotHaveDuplicates();

        EVENINGS.sendTo(file, 100);
        assertThat(kept()).as("filled up by the lanes").isEqualTo(texts.keySet());
        assertThat(Checkup.of(Database.file(file)).troubles()).as(how + " " + done.said()).isEmpty();
        assertThat(Checkup.of(Database.file(file)).waiting()).isZero();
        return how;
    }

    /** Closed, or as a host leaves it that is killed, with a part of it in the log. */
    private void fill(boolean killed) throws IOException {
        Files.copy(made.resolve(killed ? "killed.db" : "closed.db"), file);
        if (killed) {
            Files.copy(made.resolve("killed.db-wal"), log);
        }
    }

    @BeforeAll
    static void make() throws IOException {
        EVENINGS.sendTo(made.resolve("closed.db"), 100);
        Path live = made.resolve("live.db");
        try (Store store = Store.open(Database.file(live))) {
            EVENINGS.sendTo(store, 100);
            Files.copy(live, made.resolve("killed.db"));
            Files.copy(made.resolve("live.db-wal"), made.resolve("killed.db-wal"));
        }
    }

    private static byte[] harm(byte[] bytes, Harm harm, Random dice) {
        int pages = Math.max(1, bytes.length / PAGE);
        switch (harm) {
            case CUT -> {
                return Arrays.copyOf(bytes, dice.nextInt(bytes.length));
            }
            case HEAD -> dice.ints(1 + dice.nextInt(60)).forEach(each -> bytes[Math.floorMod(each, 100)] ^= (byte) (each >> 16));
            case FLIPPED -> {
                for (int i = 1 + dice.nextInt(30); i > 0; i--) {
                    bytes[dice.nextInt(bytes.length)] ^= (byte) (1 << dice.nextInt(8));
                }
            }
            default -> {
                for (int i = 1 + dice.nextInt(8); i > 0; i--) {
                    int page = dice.nextInt(pages) * PAGE;
                    int length = Math.min(PAGE, bytes.length - page);
                    byte[] instead = new byte[PAGE];
                    if (harm == Harm.SCRIBBLED) {
                        dice.nextBytes(instead);
                    } else if (harm == Harm.SWAPPED) {
                        int from = dice.nextInt(pages) * PAGE;
                        System.arraycopy(bytes, from, instead, 0, Math.min(PAGE, bytes.length - from));
                    }
                    System.arraycopy(instead, 0, bytes, page, length);
                }
            }
        }
        return bytes;
    }

    /** Events of which text and check sum stood somewhere and still stand there. */
    private Set<String> whole(byte[][] before, byte[][] after) {
        Set<String> whole = new HashSet<>();
        for (int part = 0; part < before.length; part++) {
            String was = new String(before[part], StandardCharsets.ISO_8859_1);
            for (Map.Entry<String, String> each : texts.entrySet()) {
                String stored = new String(each.getValue().getBytes(StandardCharsets.UTF_8), StandardCharsets.ISO_8859_1)
                        + CheckSum.of(each.getValue());
                for (int at = was.indexOf(stored); at >= 0; at = was.indexOf(stored, at + 1)) {
                    int end = at + stored.length();
                    if (end <= after[part].length && Arrays.equals(before[part], at, end, after[part], at, end)) {
                        whole.add(each.getKey());
                    }
                }
            }
        }
        return whole;
    }

    /** Those in the store, each of which has to be one that was sent, to the letter. */
    private Set<String> kept() {
        try (Store store = Store.open(Database.file(file))) {
            List<String[]> rows = store.read(h -> h.createQuery("SELECT j.name || ' ' || e.sequence, e.envelope FROM event e JOIN journal j "
                    + "ON j.id = e.journal_id").map((row, ctx) -> new String[] {row.getString(1), row.getString(2)}).list());
            for (String[] each : rows) {
                assertThat(each[1]).isEqualTo(texts.get(each[0]));
            }
            return rows.stream().map(each -> each[0]).collect(Collectors.toSet());
        }
    }

    private List<String> attempts() {
        try (Store store = Store.open(Database.file(file))) {
            return store.read(h -> h.createQuery("SELECT journal_id || ' ' || sequence FROM attempt").mapTo(String.class).list());
        }
    }

    private static String key(Event event) {
        return event.source().journal() + " " + event.sequence();
    }

    @Test
    void aSoundStoreIsLeftAsItIs() throws Exception {
        fill(false);
        byte[] before = Files.readAllBytes(file);
        assertThat(Repair.of(file, WALL).is()).isNull();
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
        assertThat(names()).containsExactly("studio.db");
    }

    @Test
    void aLookSaysWhatWouldBeKeptAndChangesNothing() throws Exception {
        fill(false);
        scribbleOnEvent(200);
        byte[] before = Files.readAllBytes(file);

        Repair.Done look = Repair.look(file);

        assertThat(look.said().get(0)).contains("events are kept, each with the check sum that it had");
        assertThat(look.said()).anyMatch(each -> each.contains("the lane is asked for them again"));
        assertThat(look.is().events()).isBetween(EVENINGS.all().size() - 40L, EVENINGS.all().size() - 1L);
        assertThat(look.aside()).isNull();
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
        assertThat(names()).containsExactly("studio.db");
    }

    @Test
    void aPageOfEventsThatIsGoneIsAskedForAndTheEveningsAreToldAsBefore() throws Exception {
        Path whole = Files.copy(made.resolve("closed.db"), folder.resolve("whole.db"));
        fill(false);
        scribbleOnEvent(200);

        Repair.of(file, WALL);

        assertThat(Evenings.story(file).get(1)).as("putts, those of the events that are gone among them")
                .isEqualTo(Evenings.story(whole).get(1));
        EVENINGS.sendTo(file, 100);
        assertThat(Evenings.story(file)).isEqualTo(Evenings.story(whole));
    }

    /** Notes, changes, names and settings are nowhere but in their rows; numbers of rows may be others afterwards. */
    @Test
    void whatStaffWroteAndChangedIsCarriedOver() throws Exception {
        fill(false);
        try (Store store = Store.open(Database.file(file))) {
            staff(store);
        }
        Path whole = Files.copy(file, folder.resolve("whole.db"));
        scribbleOnEvent(120);

        Repair.Done done = Repair.of(file, WALL);

        EVENINGS.sendTo(file, 100);
        assertThat(rows(file, "SELECT count(*) FROM event")).containsExactly("" + texts.size());
        List<List<String>> before = Evenings.story(whole);
        assertThat(Evenings.story(file).subList(1, 6)).as(done.said().toString()).isEqualTo(before.subList(1, 6));
        for (String sql : STAFFS) {
            assertThat(rows(file, sql)).as(sql).isEqualTo(rows(whole, sql)).isNotEmpty();
        }
    }

    private static void staff(Store store) {
        RecordBook record = new RecordBook(store);
        PlayerBook players = new PlayerBook(store);
        NoteBook notes = new NoteBook(store);
        int ana = players.add("Ann", 5);
        players.describe(ana, "left", "feet", "putts with her eyes shut");
        players.rename(number(store, "player WHERE name = 'Bo'"), "Bob", new Who("Kim", "so he says", 10));
        players.merge(number(store, "player WHERE name = 'Ana'"), ana, new Who("Kim", null, 20));
        record.voids(number(store, "attempt WHERE counts = 1 AND run_id IS NOT NULL AND holed = 1"), new Who("Kim", "a foot on the line", 30));
        int again = number(store, "attempt WHERE counts = 1 AND run_id IS NOT NULL AND sequence > 90");
        record.voids(again, new Who("Kim", "too hasty", 40));
        record.restores(again, new Who("Kim", null, 50));
        record.reassigns(number(store, "run WHERE name = 'run-3-a'"), ana, new Who("Lou", "she stood in", 60));
        notes.onPlayer(ana, "keeps her head still", new Who("Kim", null, 70));
        notes.onRun(number(store, "run WHERE name = 'run-5-b'"), "windy", new Who("Kim", null, 80));
        notes.onAttempt(number(store, "attempt WHERE sequence > 60"), "that one", new Who("Kim", null, 90));
        store.writing(h -> Settings.set(h, "opens", "09:00", 100));
        players.forget(number(store, "player WHERE name = 'Dee'"), new Who("Kim", "asked for it", 110));
    }

    private static int number(Store store, String of) {
        return store.read(h -> h.createQuery("SELECT min(id) FROM " + of).mapTo(Integer.class).one());
    }

    private static List<String> rows(Path file, String sql) {
        try (Store store = Store.open(Database.file(file))) {
            return store.read(h -> h.createQuery(sql).mapTo(String.class).list());
        }
    }

    @Test
    void whatCannotBeReadAtAllIsRefused() throws Exception {
        Files.write(file, new byte[20_000]);
        assertThatThrownBy(() -> Repair.of(file, WALL)).isInstanceOf(IOException.class)
                .hasMessageContaining("nothing that was ever played can be read of it; nothing was changed");
        assertThat(Files.readAllBytes(file)).isEqualTo(new byte[20_000]);
        assertThat(names()).containsExactly("studio.db");
    }

    private void scribbleOnEvent(int number) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        String text = List.copyOf(texts.values()).get(number);
        int at = new String(bytes, StandardCharsets.ISO_8859_1).indexOf(text);
        assertThat(at).isPositive();
        byte[] rubbish = new byte[PAGE];
        new Random(number).nextBytes(rubbish);
        System.arraycopy(rubbish, 0, bytes, at / PAGE * PAGE, PAGE);
        Files.write(file, bytes);
    }

    private List<String> names() throws IOException {
        try (var files = Files.list(folder)) {
            return new ArrayList<>(files.map(each -> each.getFileName().toString()).filter(each -> !each.contains("-shm") && !each.contains("-wal"))
                    .sorted().toList());
        }
    }
}

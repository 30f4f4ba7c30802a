package org.cupbeam.studio.kill;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.cupbeam.event.Data;
import org.cupbeam.event.Event;
import org.cupbeam.event.EventJson;
import org.cupbeam.track.Attempt;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A lane's journal is copied in mid-evening; play goes on; then its card dies, and the lane begins anew from the copy: real
 * processes, the lane's own commands, a real host and Mosquitto. Each putt is in the store once, and no number ever names two
 * events, though the copy knows nothing of numbers that were given after it was made.
 */
@Timeout(value = 4, unit = TimeUnit.MINUTES)
class RestoredJournalIT {
    private static final double SPEED = Boolean.getBoolean("cupbeam.nightly") ? 20 : 60;

    @TempDir
    private Path folder;
    private RecordedEvening evening;
    private Fleet fleet;
    private Program lane;

    @BeforeEach
    void prepare() throws Exception {
        evening = RecordedEvening.named("clean-standard");
        fleet = new Fleet(folder);
        lane = lane(0);
        fleet.broker.start();
        fleet.host.start();
        Fleet.until(fleet.host::said, 60, () -> fleet.host.readyNs() != 0);
        lane.start();
        Fleet.until(this::said, 60, () -> stored() >= 8);
    }

    @AfterEach
    void end() throws Exception {
        if (fleet != null) { // the evening may not be on this machine
            lane.close();
            fleet.close();
        }
    }

    private Program lane(long fromNs) {
        return fleet.lane(() -> List.of("--rig", evening.rigFile().toString(), "--trace", evening.trace().toString(), "--from",
                String.format(Locale.ROOT, "%.9f", fromNs / 1e9), "--speed", Double.toString(SPEED)));
    }

    @Test
    void eachPuttIsThereOnceWhereTheHostHadAllOfTheOldJournal() throws Exception {
        Path copy = backup();
        int copied = stored();
        Fleet.until(this::said, 60, () -> stored() >= copied + 6);
        lane.kill();
        List<Event> old = events();
        Fleet.until(() -> "all of the old journal is stored", 30, () -> fleet.ask("SELECT count(*) FROM event").equals("" + old.size()));
        restore(copy);
        goOnAfter(old, old.size());
    }

    /** The broker has, for a host that is away, what the card took with it: eight events at most are on their way at a time. */
    @Test
    void whatTheBrokerStillHeldOfTheOldJournalIsStoredTooAndEachPuttOnce() throws Exception {
        int copied = events().size(); // before the copy, which has them then
        Path copy = backup();
        fleet.host.kill();
        Fleet.until(this::said, 60, () -> events().size() >= copied + 5);
        TimeUnit.SECONDS.sleep(1);
        lane.kill();
        List<Event> old = events();
        restore(copy);
        fleet.host.start();
        goOnAfter(old, copied);
    }

    private Path backup() throws Exception {
        Path copy = folder.resolve("copy.db");
        journal("backup", fleet.journal().toString(), copy.toString());
        return copy;
    }

    /** The card is gone, with all that was on it. */
    private void restore(Path copy) throws Exception {
        for (String part : List.of("", "-wal", "-shm", ".lock")) {
            Files.deleteIfExists(fleet.journal().resolveSibling(fleet.journal().getFileName() + part));
        }
        journal("restore", copy.toString(), fleet.journal().toString());
    }

    private void journal(String... arguments) throws Exception {
        List<String> command = new ArrayList<>(List.of("journal"));
        command.addAll(List.of(arguments));
        Program program = new Program("journal-" + arguments[0], folder, null, () -> Program.lane(command.toArray(String[]::new)));
        program.start();
        assertThat(program.status()).as(program.said()).isZero();
    }

    /**
     * The evening goes on with the restored journal, from where nothing moved.
     *
     * @param old     what the card held when it died
     * @param surely  how many of these the host has for certain
     */
    private void goOnAfter(List<Event> old, int surely) throws Exception {
        List<Event> putts = attempts(old);
        List<Attempt> before = evening.from(0).subList(0, putts.size());
        long next = evening.quietAfter(before.get(before.size() - 1).resolvedNs());
        List<Attempt> after = evening.from(next);
        assertThat(after).as("putts that are left").hasSizeGreaterThan(5);
        lane = lane(next);
        lane.start();
        String oldJournal = old.get(0).source().journal();
        Fleet.until(() -> "the evening's last putt is stored" + said(), 120, () -> fleet.ask("SELECT count(*) FROM attempt a JOIN journal j "
                + "ON j.id = a.journal_id WHERE j.name <> '" + oldJournal + "'").equals("" + after.size()));
        Fleet.until(() -> "the lane has nothing left of the old journal" + said(), 60, () -> leftBehind() == 0);
        assertThat(lane.end()).isEqualTo(128 + 15);
        assertThat(fleet.host.end()).isEqualTo(128 + 15);
        hold(old, surely, before, after);
    }

    private void hold(List<Event> old, int surely, List<Attempt> before, List<Attempt> after) throws Exception {
        List<Event> now = events();
        assertThat(now.get(0).source().journal()).as("an id of its own").isNotEqualTo(old.get(0).source().journal());
        try (Kept store = new Kept(fleet.store())) {
            List<String> ofOld = store.rows("SELECT e.envelope FROM event e JOIN journal j ON j.id = e.journal_id WHERE j.name = '"
                    + old.get(0).source().journal() + "' ORDER BY e.sequence");
            assertThat(ofOld).as("the old journal's beginning, without a gap").isEqualTo(texts(old).subList(0, ofOld.size()));
            assertThat(ofOld).hasSizeGreaterThanOrEqualTo(surely);
            assertThat(store.rows("SELECT e.envelope FROM event e JOIN journal j ON j.id = e.journal_id WHERE j.name = '"
                    + now.get(0).source().journal() + "' ORDER BY e.sequence")).isEqualTo(texts(now));
            assertThat(store.rows("SELECT count(*) FROM missing UNION ALL SELECT count(*) FROM dead_letter UNION ALL "
                    + "SELECT count(*) FROM event WHERE problem IS NOT NULL")).containsOnly("0");
            List<String> due = new ArrayList<>();
            before.subList(0, attempts(old.subList(0, ofOld.size())).size()).forEach(each -> due.add("" + each.timeNs()));
            after.forEach(each -> due.add("" + each.timeNs()));
            assertThat(store.rows("SELECT e.monotonic_ns FROM attempt a JOIN event e ON e.journal_id = a.journal_id AND e.sequence = a.sequence "
                    + "ORDER BY e.monotonic_ns")).as("each putt once").isEqualTo(due);
            numbersNameOneEventEach(store, old, now);
            System.out.println(due.size() + " putts once each; of the old journal's " + old.size() + " events the copy held " + surely
                    + " or fewer, and " + ofOld.size() + " are stored; " + (old.size() - ofOld.size()) + " went with the card");
        }
    }

    private static void numbersNameOneEventEach(Kept store, List<Event> old, List<Event> now) throws Exception {
        Map<String, String> named = new HashMap<>();
        for (List<Event> each : List.of(old, now)) {
            for (Event event : each) {
                assertThat(named.put(event.source().journal() + "|" + event.sequence(), text(event))).isNull();
            }
        }
        for (String each : store.rows("SELECT j.name || '|' || e.sequence FROM event e JOIN journal j ON j.id = e.journal_id")) {
            assertThat(named).containsKey(each);
        }
    }

    private static String text(Event event) {
        return new String(EventJson.encode(event), StandardCharsets.UTF_8);
    }

    private static List<String> texts(List<Event> events) {
        return events.stream().map(RestoredJournalIT::text).toList();
    }

    private List<Event> events() throws Exception {
        List<Event> events = new ArrayList<>();
        for (byte[] each : Kept.events(fleet.journal())) {
            events.add(EventJson.decode(each));
        }
        return events;
    }

    private static List<Event> attempts(List<Event> of) {
        return of.stream().filter(each -> each.data() instanceof Data.Attempt).toList();
    }

    private int leftBehind() throws Exception {
        try (Kept journal = new Kept(fleet.journal())) {
            return Integer.parseInt(journal.rows("SELECT count(*) FROM left_behind").get(0));
        }
    }

    private int stored() {
        String putts = fleet.ask("SELECT count(*) FROM attempt");
        return putts.isEmpty() ? 0 : Integer.parseInt(putts);
    }

    private String said() {
        return "\nhost: " + fleet.host.said() + "\nlane: " + lane.said();
    }
}

package org.cupbeam.studio.store.logbook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.NoSuchElementException;
import org.cupbeam.event.Event;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.ingest.Batch;
import org.cupbeam.studio.store.NoteBook;
import org.cupbeam.studio.store.PlayerBook;
import org.cupbeam.studio.store.RecordBook;
import org.cupbeam.studio.store.Scope;
import org.cupbeam.studio.store.Shelf;
import org.cupbeam.studio.store.Sight;
import org.cupbeam.studio.store.StoreFixture;
import org.cupbeam.studio.store.Who;
import org.cupbeam.studio.store.sheet.JsonBook;
import org.junit.jupiter.api.Test;

/** What becomes of the record when it is put right, whichever database it lives in. */
abstract class AmendingBehaviour extends StoreFixture {
    private static final Who INES = new Who("Ines", "ball was kicked", 1_800_000_000_000L);
    private final ScriptedLane lane = new ScriptedLane("one", "j1");
    private Event fourth;

    @Test
    void voidsAnAttemptAndLetsItCountAgainAndSaysWhoDidBoth() {
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1), lane.misses("r1", null, "Ada", 2, 10));
        RecordBook book = new RecordBook(store);

        book.voids(2, INES);
        assertThat(attempts()).extracting(AttemptRow::counts).containsExactly(false, true);
        assertThat(one("SELECT putts, holed FROM lane_quarter")).containsEntry("putts", 1).containsEntry("holed", 1);
        assertThatThrownBy(() -> book.voids(2, INES)).hasMessageContaining("does not count already");

        book.restores(2, INES);
        assertThat(attempts()).extracting(AttemptRow::counts).containsExactly(true, true);
        assertThat(one("SELECT putts, holed FROM lane_quarter")).containsEntry("putts", 2).containsEntry("holed", 1);
        assertThatThrownBy(() -> book.restores(2, INES)).hasMessageContaining("counts already");
        assertThat(changes()).extracting(Change::what, Change::attempt, Change::by, Change::reason, Change::atMs)
                .containsExactly(tuple("restored", 2, "Ines", "ball was kicked", INES.atMs()),
                        tuple("voided", 2, "Ines", "ball was kicked", INES.atMs()));
    }

    @Test
    void doesNotLetAnAttemptCountThatPlayWentOnWithout() {
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1), lane.takesBack(2),
                lane.holes("r1", null, "Ada", 1), lane.voids(4, "Ines", null));

        assertThatThrownBy(() -> new RecordBook(store).restores(1, INES)).hasMessageContaining("taken back");
        new RecordBook(store).restores(2, INES);
        assertThat(attempts()).extracting(AttemptRow::counts).containsExactly(true, false);
        assertThat(store.<List<Change>>read(h -> Trail.ofPlayer(h, Sight.ALL, 1))).extracting(Change::what, Change::attempt)
                .containsExactlyInAnyOrder(tuple("taken-back", 1), tuple("voided", 2), tuple("restored", 2));
    }

    @Test
    void givesARunToWhoPlayedItAndWhatStillComesOfItToo() {
        commit(lane.starts("r1", "d1", "Ada", 1), lane.starts("r2", "d1", "Bo", 2), lane.holes("r1", "d1", "Ada", 1));
        int cy = new PlayerBook(store).add("Cy", 1);

        new RecordBook(store).reassigns(1, cy, INES);
        commit(lane.holes("r1", "d1", "Ada", 2), lane.ends("r1", "d1", "Ada", 2, 2, 2, Double.NaN),
                lane.ends("r2", "d1", "Bo", 0, 1, 0, 20), lane.endsDuel("d1", "Ada"));

        assertThat(attempts()).extracting(attempt -> attempt.of().player()).containsExactly("Cy", "Cy");
        assertThat(run(1)).extracting(RunRow::player, run -> run.result().won()).containsExactly("Cy", true);
        assertThat(run(2)).extracting(RunRow::player, run -> run.result().won()).containsExactly("Bo", false);
        assertThat(changes()).extracting(Change::what, Change::run, Change::was, Change::became)
                .containsExactly(tuple("reassigned", 1, "1", Integer.toString(cy)));
        assertThat(one("SELECT envelope FROM event WHERE sequence = 3").get("envelope").toString()).contains("\"Ada\"");
        assertThatThrownBy(() -> new RecordBook(store).reassigns(1, 99, INES)).hasMessageContaining("is nobody");
        assertThatThrownBy(() -> new RecordBook(store).reassigns(99, cy, INES)).isInstanceOf(NoSuchElementException.class);
    }

    @Test
    void countsWhatLanesSayOfAnOldNameForWhoIsCalledOtherwiseNow() {
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1));
        PlayerBook book = new PlayerBook(store);

        book.rename(1, "Ada Lund", INES);
        commit(lane.starts("r2", null, "ADA", 1), lane.starts("r3", null, "ada lund", 1));

        assertThat(all("SELECT DISTINCT player_id FROM run")).hasSize(1);
        assertThat(players()).extracting(PlayerRow::name, PlayerRow::runs).containsExactly(tuple("Ada Lund", 3));
        assertThat(changes()).extracting(Change::was, Change::became).containsExactly(tuple("Ada", "Ada Lund"));
        assertThatThrownBy(() -> book.add("Ada", 1)).hasMessageContaining("is a player already, or was one's name");
        int bo = book.add("Bo", 1);
        assertThatThrownBy(() -> book.rename(bo, "ada  lund", INES)).hasMessageContaining("merge the two");
        book.rename(bo, "Ada", INES);
        commit(lane.starts("r4", null, "Ada", 1));
        assertThat(run(4).player()).isEqualTo("Ada");
        assertThat(run(4).playerId()).isEqualTo(bo);
    }

    @Test
    void makesTwoNamesOnePlayer() {
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1), lane.starts("r2", null, "Adda", 1),
                lane.holes("r2", null, "Adda", 1), lane.starts("r3", null, "Addda", 1));
        PlayerBook book = new PlayerBook(store);
        new NoteBook(store).onPlayer(3, "grips it too hard", INES);

        book.merge(3, 2, INES);
        book.merge(2, 1, INES);
        commit(lane.starts("r4", null, "addda", 1), lane.holes("r2", null, "Adda", 2));

        assertThat(players()).extracting(PlayerRow::name, PlayerRow::runs).containsExactly(tuple("Ada", 4));
        assertThat(attempts()).extracting(attempt -> attempt.of().player()).containsOnly("Ada");
        assertThat(store.read(h -> Players.one(h, Sight.ALL, 3)).orElseThrow().mergedInto()).isEqualTo(1);
        assertThat(notes(1)).extracting(NoteRow::words).containsExactly("grips it too hard");
        assertThat(changes()).extracting(Change::what).containsOnly("merged", "reassigned").hasSize(5);
        assertThatThrownBy(() -> book.merge(2, 1, INES)).isInstanceOf(NoSuchElementException.class);
    }

    @Test
    void keepsWhatIsKnownOfAPlayer() {
        PlayerBook book = new PlayerBook(store);
        int ada = book.add("  Ada ", 5);
        book.describe(ada, "left", "feet", "plays on Sundays");

        assertThat(players()).containsExactly(new PlayerRow(ada, "Ada", "left", "feet", "plays on Sundays", 5, 0, null, null));
        assertThatThrownBy(() -> book.describe(ada, "third", null, null)).hasMessage("hand: give left or right");
        assertThatThrownBy(() -> book.add("a\u0007b", 1)).hasMessageContaining("cannot be shown");
        assertThatThrownBy(() -> book.add("x".repeat(41), 1)).hasMessage("name: has 41 characters; give 1 to 40");
        assertThatThrownBy(() -> book.describe(77, null, null, null)).isInstanceOf(NoSuchElementException.class);
        commit(lane.starts("r1", null, "ada", 1));
        assertThat(run(1).playerId()).isEqualTo(ada);
    }

    @Test
    void keepsNotesOnPlayersRunsAndPuttsAndWithdrawsThem() {
        commit(lane.starts("r1", null, "Ada", 1), lane.holes("r1", null, "Ada", 1), lane.starts("r2", null, "Bo", 1));
        NoteBook book = new NoteBook(store);
        book.onPlayer(1, "one\ntwo", INES);
        book.onRun(1, "a good one", INES);
        int third = book.onAttempt(1, "lucky", INES);
        book.onRun(2, "somebody else's", INES);

        assertThat(notes(1)).extracting(NoteRow::words).containsExactly("lucky", "a good one", "one\ntwo");
        assertThat(store.read(h -> RunStory.of(h, 1)).orElseThrow().notes()).extracting(NoteRow::words)
                .containsExactly("lucky", "a good one");
        book.withdraw(third, INES);
        assertThat(notes(1)).hasSize(2);
        assertThat(count("note")).isEqualTo(4);
        assertThatThrownBy(() -> book.withdraw(third, INES)).isInstanceOf(NoSuchElementException.class);
        assertThatThrownBy(() -> book.onRun(9, "x", INES)).hasMessage("there is no run 9");
        assertThatThrownBy(() -> book.onRun(1, " ", INES)).hasMessageContaining("note: has 0 characters");
    }

    @Test
    void forgetsAPlayerAndKeepsWhatWasCounted() {
        leavesTraces();
        PlayerBook book = new PlayerBook(store);

        List<Integer> mentions = book.forget(1, new Who("Ines", null, 7));

        assertThat(tables()).contains("player", "event", "setting", "shelf_drill", "fault", "dead_letter");
        for (String table : tables()) {
            assertThat(all("SELECT * FROM " + table).toString()).as(table).doesNotContainIgnoringCase("zebedee")
                    .doesNotContainIgnoringCase("zebby");
        }
        assertThat(one("SELECT reason FROM amendment WHERE what = 'reassigned'")).containsEntry("reason",
                "that was Bo, says forgotten player 1");
        assertThat(all("SELECT payload FROM dead_letter")).as("others' letters stay").hasSize(1);
        assertThat(one("SELECT terms FROM shelf_drill").get("terms").toString()).contains("Ladder");
        assertThat(mentions).isEmpty();
        assertThat(attempts()).hasSize(4);
        assertThat(run(1)).extracting(RunRow::player, run -> run.result().won()).containsExactly(null, true);
        assertThat(one("SELECT sum(putts) AS putts FROM lane_quarter").get("putts").toString()).isEqualTo("3");
        assertThat(notes(2)).extracting(NoteRow::words).containsExactly("putts well");
        assertThat(one("SELECT count(*) AS kept FROM event WHERE envelope LIKE '%forgotten player 1\"%'").get("kept"))
                .isEqualTo(8);
        assertThat(one("SELECT envelope FROM event WHERE sequence = 4").get("envelope")).isEqualTo(new String(
                ScriptedLane.json(fourth), StandardCharsets.UTF_8).replace("Zebedee", "forgotten player 1"));
        assertThatThrownBy(() -> book.forget(1, INES)).isInstanceOf(NoSuchElementException.class);
        commit(lane.starts("r9", null, "Zebedee", 1));
        assertThat(players()).extracting(PlayerRow::name).contains("Zebedee");
    }

    @Test
    void saysWhichNotesOnOthersStillHoldAForgottenName() {
        commit(lane.starts("r1", null, "Ada", 1), lane.starts("r2", null, "Bo", 1));
        int note = new NoteBook(store).onPlayer(2, "putts better than ADA", INES);

        assertThat(new PlayerBook(store).forget(1, INES)).containsExactly(note);
    }

    @Test
    void givesAPlayerAllThatIsHeldOfThem() throws IOException {
        leavesTraces();
        ByteArrayOutputStream out = new ByteArrayOutputStream();

        JsonBook.write(Dossier.of(store, Scope.ALL, 1), out);

        String held = out.toString(StandardCharsets.UTF_8);
        assertThat(held).contains("\"players\"", "\"Zebedee\"", "zebby", "\"run\":\"r1\"", "slow back", "what_was_changed",
                "renamed", "ball was kicked", "messages_on_attempts", "org.cupbeam.attempt.v1").doesNotContain("putts well");
        assertThatThrownBy(() -> Dossier.of(store, Scope.ALL, 99)).isInstanceOf(NoSuchElementException.class);
    }

    /** A player who has been renamed, has duelled, corrected others, been corrected, been given and robbed of runs. */
    void leavesTraces() {
        commit(lane.starts("r1", "d1", "Zebby", 1), lane.starts("r2", "d1", "Bo", 2), lane.holes("r1", "d1", "ZEBBY ", 1));
        new PlayerBook(store).rename(1, "Zebedee", INES);
        fourth = lane.misses("r1", "d1", "Zebedee", 2, 33.5);
        commit(fourth, lane.misses("r2", "d1", "Bo", 1, 50), lane.ends("r2", "d1", "Bo", 0, 1, 0, 50),
                lane.ends("r1", "d1", "Zebedee", 1, 2, 1, 33.5), lane.endsDuel("d1", "Zebedee"),
                lane.voids(5, "zebedee", "I said so"), lane.starts("r3", null, "Zebedee", 1),
                lane.holes("r3", null, "Zebedee", 1));
        new RecordBook(store).reassigns(3, 2, new Who("Zebedee", "that was Bo, says ZEBBY", 3));
        new RecordBook(store).voids(1, INES);
        new RecordBook(store).restores(1, INES);
        NoteBook notes = new NoteBook(store);
        notes.onPlayer(1, "slow back", INES);
        notes.onAttempt(2, "Zebedee looked up", INES);
        notes.onPlayer(2, "putts well", INES);
        commitDeadLetter("{\"player\": \"Zebedee\"");
        commitDeadLetter("{\"player\": \"zeBBy\"");
        commitDeadLetter("{\"player\": \"Zebed\\u0065e\"");
        commitDeadLetter("{\"player\": \"Zebedeeson\"".replace("Zebedeeson", "Bo"));
        commit(lane.voids(6, "Ines", "Zebedee  kicked it"));
        keeper.commit(batch(List.of(new Arrival(new ScriptedLane("two", "j2").source, 1, NOW, null, "player: is \"ZEBEDEE\"",
                "{\"odd\": \"for zebby, once\"}".getBytes(StandardCharsets.UTF_8), NOW))));
        store.writing(h -> Shelf.add(h, ScriptedLane.LADDER, "Zebedee", 4));
        new PlayerBook(store).describe(2, null, null, "comes with Zebedee");
    }

    private void commitDeadLetter(String payload) {
        keeper.commit(new Batch(List.of(), List.of(), List.of(
                new Batch.DeadLetter("t", "is not JSON", payload.getBytes(StandardCharsets.UTF_8),
                        NOW))));
    }

    /** Every table that there is, whichever database it is. */
    private List<String> tables() {
        return store.read(h -> {
            List<String> names = new ArrayList<>();
            try (ResultSet found = h.getConnection().getMetaData().getTables(null, null, "%", new String[] {"TABLE"})) {
                while (found.next()) {
                    names.add(found.getString("TABLE_NAME"));
                }
            } catch (SQLException e) {
                throw new IllegalStateException(e);
            }
            return names;
        });
    }

    private RunRow run(int id) {
        return store.read(h -> Runs.one(h, id)).orElseThrow();
    }

    private List<AttemptRow> attempts() {
        return store.read(h -> Attempts.page(h, LogFilter.ALL, null, 100)).rows();
    }

    private List<Change> changes() {
        return store.read(h -> Trail.page(h, Sight.ALL, null, 100)).rows().stream().filter(change -> change.journal() == 0).toList();
    }

    private List<PlayerRow> players() {
        return store.read(h -> Players.byName(h, Sight.ALL, "", null, 100)).rows();
    }

    private List<NoteRow> notes(int player) {
        return store.read(h -> Notes.ofPlayer(h, Sight.ALL, player, null, 100)).rows();
    }
}

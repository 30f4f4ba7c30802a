package org.cupbeam.studio.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import org.cupbeam.event.Event;
import org.cupbeam.studio.ScriptedLane;
import org.cupbeam.studio.ingest.Arrival;
import org.cupbeam.studio.store.upkeep.Evenings;
import org.junit.jupiter.api.Test;

/** Events of a newer lane, and a host that understands them only later, whichever database it is. */
abstract class ReadingAgainBehaviour extends StoreFixture {
    private static final long SEED = Long.getLong("cupbeam.seed", 20261126);
    private static final int BATCH = 5;
    private final ScriptedLane lane = new ScriptedLane("one", "j1");

    /** How many evenings are tried. */
    abstract int evenings();

    /** The model is a host that understood everything from the start. */
    @Test
    void whateverWasNotUnderstoodTakesItsPlaceAsIfItHadBeenFromTheStart() {
        List<Event> evening = withVoids(new Evenings(6).all());
        send(evening, List.of());
        List<List<String>> model = Evenings.story(store);
        assertThat(model).allSatisfy(table -> assertThat(table).isNotEmpty());
        for (int i = 0; i < evenings(); i++) {
            Random random = new Random(SEED + i);
            double share = random.nextDouble();
            List<Event> newer = evening.stream().filter(each -> random.nextDouble() < share).toList();
            store.close();
            open();
            send(evening, newer);

            new Keeper(store).readAgain();

            assertThat(Evenings.story(store)).as("-Dcupbeam.seed=%d, evening %d", SEED, i).isEqualTo(model);
        }
    }

    @Test
    void whatIsReadAgainIsCountedOnceHoweverOften() {
        Event putt = lane.holes("r1", null, "Ada", 1);
        keeper.commit(batch(List.of(notUnderstood(putt))));
        assertThat(count("attempt")).isZero();

        keeper.readAgain();
        keeper.readAgain();
        new Keeper(store).readAgain();
        commit(putt);

        assertThat(count("attempt")).isEqualTo(1);
        assertThat(one("SELECT putts FROM lane_quarter")).containsEntry("putts", 1);
    }

    @Test
    void whatIsStillNotUnderstoodStaysWordForWordAndHoldsUpNoOther() {
        String newer = text(lane.holes("r1", null, "Ada", 1)).replace("attempt.v1", "attempt.v2").replace("\"rim\"", "\"lip\"");
        keeper.commit(batch(List.of(new Arrival(lane.source, 1, NOW, null, "type: is new", newer.getBytes(StandardCharsets.UTF_8), NOW),
                notUnderstood(lane.holes("r1", null, "Ada", 1)))));

        keeper.readAgain();

        assertThat(all("SELECT envelope, problem FROM event ORDER BY sequence").get(0)).containsEntry("envelope", newer)
                .containsEntry("problem", "type: is new");
        assertThat(count("attempt")).isEqualTo(1);
        assertThat(keeper.kept().get(0).upTo()).isEqualTo(2);
    }

    @Test
    void whoeverWasForgottenMeanwhileIsNotMadeAPlayerAgain() {
        commit(lane.starts("r1", null, "Zebedee", 1));
        keeper.commit(batch(List.of(notUnderstood(lane.holes("r2", null, "Zebedee", 1)))));
        new PlayerBook(store).forget(1, new Who("Ines", null, 7));

        keeper.readAgain();

        assertThat(all("SELECT name FROM player WHERE name IS NOT NULL")).isEmpty();
        assertThat(count("attempt")).isZero();
    }

    private void send(List<Event> evening, List<Event> newer) {
        Keeper its = new Keeper(store);
        evening.stream().collect(Collectors.groupingBy(Event::source)).values().stream()
                .sorted(Comparator.comparing(of -> of.get(0).source().toString())).forEach(of -> {
                    for (int from = 0; from < of.size(); from += BATCH) {
                        its.commit(batch(of.subList(from, Math.min(of.size(), from + BATCH)).stream()
                                .map(each -> newer.contains(each) ? notUnderstood(each) : arrival(each, NOW)).toList()));
                    }
                });
    }

    /** And a lane whose coach strikes putts from the record, while a run goes on and after it has ended. */
    private static List<Event> withVoids(List<Event> evening) {
        List<Event> all = new ArrayList<>(evening);
        ScriptedLane third = new ScriptedLane("bay-three", "journalthree");
        for (int game = 0; game < 3; game++) {
            String run = "v" + game;
            all.add(third.starts(run, null, "Eli", 1));
            all.add(third.passes(20).holes(run, null, "Eli", 1));
            long first = third.sequence();
            all.add(third.passes(20).misses(run, null, "Eli", 2, 310));
            if (game == 1) {
                all.add(third.voids(first, "Ines", "a kick"));
            }
            all.add(third.passes(20).misses(run, null, "Eli", 2, 120));
            all.add(third.passes(20).ends(run, null, "Eli", 1, 3, 1, 215));
            if (game == 2) {
                all.add(third.voids(first, "Ines", "a kick"));
            }
        }
        return all;
    }

    private static Arrival notUnderstood(Event event) {
        return new Arrival(event.source(), event.sequence(), event.time(), null, "type: is not known", ScriptedLane.json(event), NOW);
    }

    private static String text(Event event) {
        return new String(ScriptedLane.json(event), StandardCharsets.UTF_8);
    }
}
